package mainsgap.session;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.zip.DataFormatException;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * What a trial's entry says of its capture.
 *
 * @param entry the number of the entry
 * @param place the file and the entry in words, for complaints
 */
record StoredCapture(long entry, String place, TimeAxis time, List<StoredChannel> channels) {

  /** Reads the blocks and holds each against its digest. */
  Capture read(Handle handle) {
    int blocks =
        handle
            .createQuery("SELECT count(*) FROM block WHERE entry = ?")
            .bind(0, entry)
            .mapTo(int.class)
            .one();
    if (blocks != channels.size()) {
      throw broken("it names " + channels.size() + " data blocks, the file has " + blocks, null);
    }
    Map<ChannelRole, Waveform> waveforms = new EnumMap<>(ChannelRole.class);
    for (StoredChannel channel : channels) {
      waveforms.put(
          channel.role(), new Waveform(block(handle, channel), channel.format(), channel.scale()));
    }
    return new Capture(time, waveforms);
  }

  private byte[] block(Handle handle, StoredChannel channel) {
    byte[] packed =
        handle
            .createQuery("SELECT packed FROM block WHERE entry = ? AND channel = ?")
            .bind(0, entry)
            .bind(1, channel.role().name())
            .mapTo(byte[].class)
            .findOne()
            .orElseThrow(() -> broken("the block of " + channel.role() + " is missing", null));
    byte[] block;
    try {
      block = PackedBlock.unpack(packed, channel.bytes());
    } catch (DataFormatException e) {
      throw broken("the block of " + channel.role() + " is damaged", e);
    }
    if (!Seal.of(block).equals(channel.sha256())) {
      throw broken("the block of " + channel.role() + " is not the one that was sealed", null);
    }
    return block;
  }

  private SessionException broken(String how, @Nullable Exception cause) {
    String sentence = "the seal of " + place + " is broken: " + how;
    return cause == null ? new SessionException(sentence) : new SessionException(sentence, cause);
  }
}
