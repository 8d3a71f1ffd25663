/**
 * The picture of a recorded voltage: {@link TraceView} shows a {@link TraceScene}. All that draws
 * works on plain pixels and knows nothing of the toolkit.
 */
@NullMarked
package mainsgap.desk.trace;

import org.jspecify.annotations.NullMarked;
