package mainsgap.arming;

/**
 * What the hand on the switch is asked for.
 *
 * @param move the move of the mains switch
 * @param sentence the words for people
 */
public record Prompt(SwitchMove move, String sentence) {}
