package mainsgap.settings;

/**
 * Where in a settings file something stands.
 *
 * @param file the file's name
 * @param line from 1
 * @param key the dotted key, empty for the whole file
 */
record SettingsPlace(String file, int line, String key) {

  SettingsException complaint(String sentence) {
    return new SettingsException(file + " line " + line + ": '" + key + "' " + sentence);
  }

  /** The dotted name of {@code child} in the table that stands here. */
  String dotted(String child) {
    return key.isEmpty() ? child : key + "." + child;
  }
}
