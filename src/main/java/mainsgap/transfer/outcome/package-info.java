/**
 * What is asked of a measurement and what it answers: a task, the outcomes of an event with their
 * figures and uncertainty, and how both are said.
 */
@NullMarked
package mainsgap.transfer.outcome;

import org.jspecify.annotations.NullMarked;
