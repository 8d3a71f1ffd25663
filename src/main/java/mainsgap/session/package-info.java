/** The session log: one append-only, sealed SQLite file a session; capture files in. */
@NullMarked
package mainsgap.session;

import org.jspecify.annotations.NullMarked;
