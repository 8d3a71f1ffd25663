package mainsgap.desk.rig;

import java.util.List;
import java.util.Locale;
import mainsgap.bench.ProbedChannel;
import mainsgap.bench.ProbedChannel.Category;
import mainsgap.signal.ChannelRole;
import org.jspecify.annotations.Nullable;

/** The probe of a channel that sees a supply. */
final class ClipFields {
  static final String YES = "yes";
  static final String NO = "no";

  final ChannelRole role;
  final Field<String> connected;
  final Field<Integer> number;
  final Field<Double> probeFactor;
  final Field<Category> category;
  final Field<Double> ratedVolts;

  ClipFields(ChannelRole role) {
    this.role = role;
    String key = role.words().replace(' ', '-') + ".";
    connected = new Field<>(key + "connected", "connected", Readings.words());
    number =
        new Field<>(
            key + "number", "the channel's number", Readings.whole(1, ProbedChannel.MOST_CHANNELS));
    probeFactor =
        new Field<>(
            key + "probe-factor",
            "the probe factor",
            Readings.number(ProbedChannel.SMALLEST_FACTOR, ProbedChannel.LARGEST_FACTOR, ""));
    category =
        new Field<>(
            key + "category",
            "the measurement category",
            Readings.choice(Category.class, ClipFields::word));
    ratedVolts =
        new Field<>(
            key + "rated-volts",
            "the rating to earth",
            Readings.number(1, ProbedChannel.LARGEST_RATING, "V"));
  }

  List<Field<?>> all() {
    return List.of(connected, number, probeFactor, category, ratedVolts);
  }

  /** A series cannot do without the output. */
  boolean isNeeded() {
    return role == ChannelRole.OUTPUT;
  }

  boolean isConnected() {
    return isNeeded() || connected.text().equals(YES);
  }

  void show(@Nullable ProbedChannel channel) {
    connected.type(channel == null ? NO : YES);
    number.type(channel == null ? null : channel.number());
    probeFactor.type(channel == null ? null : Readings.plain(channel.probeFactor()));
    category.type(channel == null ? null : word(channel.category()));
    ratedVolts.type(channel == null ? null : Readings.plain(channel.ratedVolts()));
  }

  /** What is connected; null where nothing is, or something is not said yet. */
  @Nullable ProbedChannel channel() {
    Integer channel = number.value();
    Double factor = probeFactor.value();
    Category of = category.value();
    Double volts = ratedVolts.value();
    return !isConnected() || channel == null || factor == null || of == null || volts == null
        ? null
        : new ProbedChannel(channel, factor, of, volts);
  }

  static String word(Category category) {
    return category.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
