package org.isopter.mapper.mllp;

import java.nio.file.Path;

/** Who hears what a listener does; called by many threads, one at a time. */
public interface ListenerEvents {

  /**
   * A message is kept and acknowledged.
   *
   * @param file where it is
   * @param before whether it was kept before, and was sent again
   */
  void kept(Path file, boolean before);

  /**
   * Something was not taken.
   *
   * @param sender the address of who sent it
   * @param why the answer's code and what would have been taken; nothing of what was sent
   */
  void refused(String sender, String why);
}
