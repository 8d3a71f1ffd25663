package mainsgap.desk.rig;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import mainsgap.signal.ChannelRole;
import org.jspecify.annotations.Nullable;

/** What a rig is made of, in the order of the power and then of the signal. */
enum Part {
  WALL("Wall", null),
  SWITCH("Mains switch", null),
  UNIT("Unit under test", null),
  LOAD("Load", null),
  MAINS_CLIP("At the mains", ChannelRole.MAINS),
  OUTPUT_CLIP("At the output", ChannelRole.OUTPUT),
  SECOND_LEG_CLIP("Second leg", ChannelRole.SECOND_LEG),
  CURRENT_CLAMP("Load current", ChannelRole.LOAD_CURRENT),
  SCOPE("Scope", null);

  private final String title;
  private final @Nullable ChannelRole role;

  Part(String title, @Nullable ChannelRole role) {
    this.title = title;
    this.role = role;
  }

  /** Its name for people. */
  String title() {
    return title;
  }

  /** What it watches; empty where it is no clip. */
  Optional<ChannelRole> role() {
    return Optional.ofNullable(role);
  }

  /** Its name in style sheets and for tests. */
  String id() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The clip that watches {@code role}. */
  static Optional<Part> of(ChannelRole role) {
    return Stream.of(values()).filter(part -> part.role == role).findFirst();
  }
}
