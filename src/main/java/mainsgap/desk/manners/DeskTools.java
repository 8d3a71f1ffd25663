package mainsgap.desk.manners;

import mainsgap.waiting.Clock;

/**
 * What every page works with.
 *
 * @param ui the thread on which what is shown changes
 * @param background work beside it
 * @param memory what is as it was left
 * @param appearance light or dark, size of type
 * @param sounds what is heard
 * @param clock the time
 */
public record DeskTools(
    UiThread ui,
    Background background,
    DeskMemory memory,
    Appearance appearance,
    Sounds sounds,
    Clock clock) {}
