/** Figures of one or many sessions, as data that can be drawn at any size. */
@NullMarked
package mainsgap.report;

import org.jspecify.annotations.NullMarked;
