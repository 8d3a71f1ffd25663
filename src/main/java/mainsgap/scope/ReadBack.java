package mainsgap.scope;

/**
 * How to ask what an instrument made of a setting.
 *
 * @param query the message
 * @param gives the quantity that the reply is
 */
record ReadBack(CommandTemplate query, Placeholder gives) {}
