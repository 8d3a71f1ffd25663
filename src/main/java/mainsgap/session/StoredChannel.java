package mainsgap.session;

import mainsgap.signal.ChannelRole;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Scale;

/** What a trial's entry says of one channel: its block is a row of its own. */
record StoredChannel(ChannelRole role, CodeFormat format, Scale scale, int bytes, String sha256) {}
