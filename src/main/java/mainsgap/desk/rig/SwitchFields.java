package mainsgap.desk.rig;

import java.util.List;
import mainsgap.bench.CatchWish;
import mainsgap.bench.RigSheet;
import mainsgap.bench.SeriesPlan;
import mainsgap.signal.Event;

/** How mains is switched: how often, which way, and how that is caught. */
final class SwitchFields {
  static final int USUAL_TRIALS = 10;

  final Field<Integer> trials =
      new Field<>(
          "series.trials", "the number of trials", Readings.whole(1, SeriesPlan.MOST_TRIALS));
  final Field<Event> event =
      new Field<>("series.event", "the event", Readings.choice(Event.class, Event::word));
  final Field<CatchWish> catching =
      new Field<>(
          "series.catch", "how it is caught", Readings.choice(CatchWish.class, CatchWish::word));

  List<Field<?>> all() {
    return List.of(trials, event, catching);
  }

  void show(RigSheet.Wish wish) {
    trials.type(wish.trials());
    event.type((wish.event() == null ? Event.LOSS : wish.event()).word());
    catching.type((wish.catching() == null ? CatchWish.AUTOMATIC : wish.catching()).word());
  }

  RigSheet.Wish wish() {
    return new RigSheet.Wish(trials.value(), event.value(), catching.value());
  }
}
