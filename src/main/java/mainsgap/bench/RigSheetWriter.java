package mainsgap.bench;

import mainsgap.settings.SettingsText;
import mainsgap.signal.ChannelRole;
import mainsgap.transfer.claim.DeclaredClaim;

/** Writes a rig file that {@link RigSheetReader} reads to an equal sheet. */
final class RigSheetWriter {
  private RigSheetWriter() {}

  static String text(RigSheet sheet) {
    SettingsText text = new SettingsText().remark("a rig of Mainsgap; run --rig reads it");
    text.table("instrument")
        .text("resource", sheet.instrument().resource())
        .text("simulated", sheet.instrument().simulated())
        .whole("seed", sheet.instrument().seed())
        .text("profile", sheet.instrument().profile());
    text.table("unit")
        .text("name", sheet.unit().name())
        .text("serial", sheet.unit().serial())
        .text("firmware", sheet.unit().firmware());
    DeclaredClaim claim = sheet.claim();
    if (claim != null) {
      ClaimTable.write(claim, text);
    }
    text.table("supply")
        .number("nominal-volts", sheet.supply().nominalVolts())
        .number("frequency-hertz", sheet.supply().frequencyHertz())
        .number("line-to-earth-volts", sheet.supply().lineToEarthVolts())
        .number("settle-seconds", sheet.supply().settleSeconds())
        .number("longest-check-seconds", sheet.supply().longestCheckSeconds());
    wish(sheet.wish(), text);
    sheet.channels().forEach((role, channel) -> channel(role, channel, text));
    ClampedChannel clamped = sheet.loadCurrent();
    if (clamped != null) {
      text.table("channels.load-current")
          .whole("number", clamped.number())
          .number("amperes-per-volt", clamped.amperesPerVolt())
          .number("peak-amperes", clamped.peakAmperes());
    }
    text.block(sheet.kept().marker())
        .block(sheet.kept().externalInput())
        .block(sheet.kept().mainsSwitch());
    text.table("load").text("description", sheet.load());
    text.table("conditions");
    sheet.conditions().forEach(text::text);
    return text.toString();
  }

  private static void wish(RigSheet.Wish wish, SettingsText text) {
    text.table("series").whole("trials", wish.trials());
    if (wish.event() != null) {
      text.text("event", Words.hyphened(wish.event()));
    }
    if (wish.catching() != null) {
      text.text("catch", wish.catching().word());
    }
  }

  private static void channel(ChannelRole role, ProbedChannel channel, SettingsText text) {
    text.table("channels." + RigSheetReader.key(role))
        .whole("number", channel.number())
        .number("probe-factor", channel.probeFactor())
        .text("category", Words.hyphened(channel.category()))
        .number("rated-volts", channel.ratedVolts());
  }
}
