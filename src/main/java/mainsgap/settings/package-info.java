/** TOML files read with file, line and key in each complaint, and no path outside their folder. */
@NullMarked
package mainsgap.settings;

import org.jspecify.annotations.NullMarked;
