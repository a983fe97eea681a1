package org.isopter.model.note;

import java.util.Optional;
import org.isopter.model.note.grammar.ItemReader;
import org.isopter.model.note.item.Grammars;
import org.isopter.model.note.token.NotRead;

/**
 * A heading of acuity, or an acuity, that is not understood: what it says may be how the acuities
 * behind it were tested, as in {@code VA through pinhole, chart moved} and {@code R 6/9}, or in
 * {@code NV dimmed R 6/9; L 6/12}. So may a pinhole that an item starts with which is not read. Up
 * to the next heading they are not read.
 */
final class UnclearHeading {

  private boolean open;

  /** Takes note that another heading starts, or another part of the note. */
  void clear() {
    open = false;
  }

  /** Takes note of an item that was not read. */
  void left(Piece piece, Optional<ItemReader.Start> start) {
    boolean heading = start.map(ItemReader.Start::grammar).filter(Grammars::isOfAcuity).isPresent();
    boolean pinhole = BareHeadings.startsWithPinhole(piece.tokens());
    open = open || pinhole || heading || Grammars.holdsAcuity(piece.tokens());
  }

  /**
   * Refuses an acuity without a heading behind one that was not understood.
   *
   * @param start how the item starts, where it has a heading or goes on with another item
   */
  void requireNone(Optional<ItemReader.Start> start) throws NotRead {
    if (open && start.isEmpty()) {
      throw NotRead.because(
          "a heading that is not understood stands before it and may say how it was tested");
    }
  }
}
