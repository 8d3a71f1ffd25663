package mainsgap.desk.manners;

import javafx.beans.property.ReadOnlyStringProperty;
import mainsgap.bench.SeriesRequest;

/** Where a series comes from: the rig as it is set. For the UI thread. */
public interface SeriesSource {

  /** Why no series can start yet, and what to do: one sentence; empty where one can. */
  ReadOnlyStringProperty whyNotReady();

  /**
   * The series to run.
   *
   * @throws IllegalStateException with {@link #whyNotReady} where it is not empty
   */
  SeriesRequest request();
}
