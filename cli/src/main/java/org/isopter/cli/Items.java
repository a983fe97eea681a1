package org.isopter.cli;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import java.util.function.Consumer;

/** Takes sources apart into documents. */
final class Items {

  /** The most bytes of one document; a full examination as FHIR has some sixty thousand. */
  static final int LONGEST = 1 << 26;

  /** Hears of what was told of and never handed on. */
  @FunctionalInterface
  interface Lost {
    void at(Source source, int line, String reason);
  }

  private final Journal journal;
  private final Lost lost;

  Items(Journal journal) {
    this(journal, (source, line, reason) -> {});
  }

  Items(Journal journal, Lost lost) {
    this.journal = journal;
    this.lost = lost;
  }

  /** Hands every document on; a bad one is told of and never stops the rest. */
  void each(Iterable<Source> sources, Consumer<Item> use) {
    for (Source source : sources) {
      try (InputStream in = source.opener().open()) {
        each(source, in, use);
      } catch (IOException failed) {
        journal.unreadable(source.name(), failed);
        lost.at(source, 0, "unreadable");
      }
    }
  }

  private void each(Source source, InputStream in, Consumer<Item> use) throws IOException {
    int found = source.mayHoldSeveral() ? lines(source, in, use) : whole(source, in, use);
    if (found == 0) {
      journal.say(source.name() + " is empty: nothing to do");
    }
  }

  private int whole(Source source, InputStream in, Consumer<Item> use) throws IOException {
    Item item = new Item(source, 0, in.readNBytes(LONGEST + 1));
    if (item.isBlank()) {
      return 0;
    }
    one(item, use);
    return 1;
  }

  private int lines(Source source, InputStream in, Consumer<Item> use) throws IOException {
    LineReader lines = new LineReader(in, LONGEST + 1);
    int found = 0;
    int number = 0;
    Optional<byte[]> line = lines.line();
    while (line.isPresent()) {
      Item item = new Item(source, ++number, line.get());
      if (!item.isBlank()) {
        found++;
        one(item, use);
      }
      line = lines.line();
    }
    return found;
  }

  private void one(Item item, Consumer<Item> use) {
    if (item.bytes().length > LONGEST) {
      String text = "more than " + (LONGEST >> 20) + " MB for one document";
      Issue issue = Issue.of(Issue.Severity.ERROR, "too-long", item.position(), text);
      journal.refuse(item.position(), java.util.List.of(issue));
      lost.at(item.source(), item.line(), "too-long");
      return;
    }
    try {
      use.accept(item);
    } catch (UnwritableException failed) {
      throw failed;
    } catch (RuntimeException mistake) {
      journal.broken(item.position(), mistake);
    }
  }
}
