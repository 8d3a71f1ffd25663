/** The report of sessions as one page of HTML that needs nothing beside itself. */
@NullMarked
package mainsgap.report.page;

import org.jspecify.annotations.NullMarked;
