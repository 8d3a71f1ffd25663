/** The page on which a series runs: what the bench does now, the trials, and the hand's part. */
@NullMarked
package mainsgap.desk.trials;

import org.jspecify.annotations.NullMarked;
