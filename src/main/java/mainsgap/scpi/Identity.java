package mainsgap.scpi;

/**
 * What an instrument answers to {@code *IDN?} (IEEE 488.2 10.14).
 *
 * @param manufacturer the first field
 * @param model the second field
 * @param serial the third field, "0" where the instrument gives none
 * @param firmware the fourth field
 */
public record Identity(String manufacturer, String model, String serial, String firmware) {

  @Override
  public String toString() {
    return manufacturer + " " + model + ", serial " + serial + ", firmware " + firmware;
  }
}
