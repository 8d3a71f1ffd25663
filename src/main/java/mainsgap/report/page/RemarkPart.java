package mainsgap.report.page;

import java.util.Locale;
import mainsgap.session.Remark;

/**
 * An entry of the session beside its trials, as a row.
 *
 * @param at when it was made, UTC
 * @param kind what it is
 * @param trial the trial that it is about, or "-"
 * @param text as it was logged
 */
record RemarkPart(String at, String kind, String trial, String text) {

  static RemarkPart of(Remark remark) {
    return new RemarkPart(
        PageTime.inColumn(remark.at()),
        remark.kind().name().toLowerCase(Locale.ROOT).replace('_', ' '),
        remark.trial() == null ? "-" : remark.trial().toString(),
        remark.text());
  }
}
