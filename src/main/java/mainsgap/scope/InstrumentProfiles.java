package mainsgap.scope;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import mainsgap.scpi.Identity;
import mainsgap.settings.SettingsFile;

/** The profiles of a folder. Immutable. */
public final class InstrumentProfiles {
  private final List<InstrumentProfile> profiles;

  InstrumentProfiles(List<InstrumentProfile> profiles) {
    this.profiles = List.copyOf(profiles);
  }

  /**
   * Reads and checks every profile in {@code folder}.
   *
   * @throws mainsgap.settings.SettingsException with file, line and key if one is wrong
   * @throws ScopeException if there is none
   */
  public static InstrumentProfiles load(Path folder) {
    List<InstrumentProfile> profiles =
        SettingsFile.names(folder).stream()
            .map(name -> ProfileReader.read(SettingsFile.read(folder, name)))
            .toList();
    if (profiles.isEmpty()) {
      throw new ScopeException(
          "the folder " + folder + " has no instrument profile: put a .toml file into it");
    }
    return new InstrumentProfiles(profiles);
  }

  /** All profiles, sorted by name. */
  public List<InstrumentProfile> all() {
    return profiles;
  }

  /**
   * The profile of that name.
   *
   * @throws ScopeException if there is none
   */
  public InstrumentProfile named(String name) {
    return profiles.stream()
        .filter(profile -> profile.name().equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                new ScopeException(
                    "there is no instrument profile '" + name + "'; there are: " + names()));
  }

  /** The names of the profiles whose pattern an identity is of; nothing is asked. */
  public List<String> naming(Identity identity) {
    return profiles.stream()
        .filter(profile -> ProfileProbe.isNamed(profile, identity))
        .map(InstrumentProfile::name)
        .toList();
  }

  String names() {
    return profiles.stream().map(InstrumentProfile::name).collect(Collectors.joining(", "));
  }
}
