package mainsgap.link;

import mainsgap.waiting.Deadline;

/** How links are opened: plainly, with everything written down, or from what was written down. */
@FunctionalInterface
public interface LinkOpener {

  /** Opens the link that the resource name says. */
  LinkOpener PLAIN = ResourceName::open;

  /**
   * Opens a link to {@code resource}.
   *
   * @throws LinkException where the instrument can't be reached, or this kind of link isn't served
   */
  Link open(ResourceName resource, Deadline connectBy);
}
