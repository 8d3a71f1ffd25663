package mainsgap.scope;

import java.util.Locale;

/** What a profile's command can have filled in; written in braces, small, with hyphens. */
enum Placeholder {
  /** The channel's number, from 1. */
  CHANNEL,
  /** Volts at the tip for each volt at the input. */
  PROBE_FACTOR,
  /** The range's reach from its middle. */
  PEAK_VOLTS,
  /** The whole range. */
  PEAK_TO_PEAK_VOLTS,
  /** The whole range over the vertical divisions. */
  VOLTS_PER_DIVISION,
  /** The record length. */
  SAMPLES,
  /** The sample interval. */
  INTERVAL_SECONDS,
  /** The inverse of the sample interval. */
  SAMPLE_RATE_HERTZ,
  /** The whole record. */
  DURATION_SECONDS,
  /** The whole record over the horizontal divisions. */
  SECONDS_PER_DIVISION,
  /** The first sample's time, the trigger being at 0. */
  FIRST_SAMPLE_SECONDS,
  /** The time of the record's middle, the trigger being at 0. */
  CENTRE_SECONDS,
  /** The part of the record that lies before the trigger, 0 to 1. */
  PRE_TRIGGER_FRACTION,
  /** The same in per cent, 0 to 100. */
  PRE_TRIGGER_PERCENT,
  /** The trigger's level. */
  LEVEL_VOLTS,
  /** The upper level of a window. */
  UPPER_LEVEL_VOLTS,
  /** The lower level of a window. */
  LOWER_LEVEL_VOLTS,
  /** A level near the end of the range, which a supply in order does not reach. */
  UNREACHED_LEVEL_VOLTS,
  /** How long the signal is quiet before the trigger fires. */
  TIME_OUT_SECONDS,
  /** The first sample of a part of the record, from 1. */
  FIRST,
  /** The last sample of a part of the record, counted in. */
  LAST;

  /** The name as a profile writes it. */
  String spelt() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
