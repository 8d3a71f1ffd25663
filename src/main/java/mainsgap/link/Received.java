package mainsgap.link;

/**
 * What one read brought.
 *
 * @param bytes how many were put into the buffer
 * @param messageEnded whether the link marked the end of the message behind them; always false on a
 *     link that marks none
 */
public record Received(int bytes, boolean messageEnded) {}
