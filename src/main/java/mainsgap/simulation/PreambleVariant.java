package mainsgap.simulation;

/** How the y origin of a ten-field preamble is meant. */
public enum PreambleVariant {
  /** In volts: {@code (code - reference) * increment + origin}. */
  ORIGIN_IN_VOLTS,
  /** In codes: {@code (code - reference - origin) * increment}. */
  ORIGIN_IN_CODES
}
