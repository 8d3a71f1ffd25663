/** The page of the findings: sessions side by side, as figures to compare and to publish. */
@NullMarked
package mainsgap.desk.findings;

import org.jspecify.annotations.NullMarked;
