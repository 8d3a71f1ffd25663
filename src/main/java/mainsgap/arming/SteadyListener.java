package mainsgap.arming;

import mainsgap.session.Addition;
import mainsgap.session.Trial;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Keeps a fault of a face away from the loop: a capture must not be lost because a screen was. */
final class SteadyListener implements LoopListener {
  private static final Logger LOG = LoggerFactory.getLogger(SteadyListener.class);
  private final LoopListener face;

  SteadyListener(LoopListener face) {
    this.face = face;
  }

  @Override
  public void entered(LoopState state) {
    tell(() -> face.entered(state));
  }

  @Override
  public void prompted(Prompt prompt) {
    tell(() -> face.prompted(prompt));
  }

  @Override
  public void progressed(Progress progress) {
    tell(() -> face.progressed(progress));
  }

  @Override
  public void noted(String sentence) {
    tell(() -> face.noted(sentence));
  }

  @Override
  public void trialLogged(Trial trial) {
    tell(() -> face.trialLogged(trial));
  }

  @Override
  public void added(Addition addition) {
    tell(() -> face.added(addition));
  }

  @Override
  public void notAdded(Addition addition, String why) {
    tell(() -> face.notAdded(addition, why));
  }

  private static void tell(Runnable news) {
    try {
      news.run();
    } catch (RuntimeException e) {
      LOG.warn("what listens to the series failed; the series goes on", e);
    }
  }
}
