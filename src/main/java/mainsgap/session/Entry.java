package mainsgap.session;

/**
 * One row of a session.
 *
 * @param number from 1, without gaps
 * @param kind one of the words below
 * @param content one JSON object
 * @param seal over all this and the seal before
 */
record Entry(long number, String kind, String content, String seal) {
  static final String HEADER = "header";
  static final String TRIAL = "trial";
  static final String REMARK = "remark";
  static final String SET_ASIDE = "set-aside";
}
