package org.isopter.task.pool;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import org.isopter.mapper.foreign.run.Deletions;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.mapper.pool.PoolDocument;
import org.isopter.mapper.pool.PoolRun;
import org.isopter.model.value.FaultException;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputDocuments;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputSource;
import org.isopter.task.io.Messages;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;

/** Hands the documents of sources to a pool. */
public final class PoolFeed {

  private final PoolRun run;
  private final Function<InputSource, String> names;

  /**
   * Makes a feed.
   *
   * @param names what the tables call each source
   */
  public PoolFeed(PoolRun run, Function<InputSource, String> names) {
    this.run = run;
    this.names = names;
  }

  /**
   * Hands every document of the sources to the pool, without what a list beside its file says was
   * deleted; a bad one never stops the rest.
   *
   * @throws UsageException when the pool refuses the run, such as one that was made with another
   *     key
   */
  public void feed(RunLog log, List<InputSource> sources) {
    InputDocuments documents = new InputDocuments(log, this::lose);
    for (InputSource source : sources) {
      try {
        Deletions deletions = Deletions.beside(source.name());
        documents.each(List.of(source), item -> left(item, deletions));
      } catch (IOException unknown) {
        // To read on would bring back what was deleted.
        log.unreadable(source.name(), unknown);
        lose(source, 0, "unreadable");
      }
    }
  }

  private void left(InputDocument item, Deletions deletions) {
    if (deletions.areNone() || item.form() == InputForm.YAML) {
      add(item, item.bytes());
    } else if (item.form() == InputForm.XML) {
      lose(item.source(), item.line(), "deletions-beside-xml");
    } else {
      deletions
          .left(item.bytes(), name -> lose(item.source(), item.line(), "deleted"))
          .ifPresent(bytes -> add(item, bytes));
    }
  }

  /** What could not be handed over is left over too, so that everything is accounted for. */
  private void lose(InputSource source, int line, String reason) {
    try {
      run.lose(names.apply(source), line, reason);
    } catch (IOException failed) {
      throw new UnwritableException("the tables", failed);
    }
  }

  private void add(InputDocument item, byte[] bytes) {
    PoolDocument.Form form =
        switch (item.form()) {
          case YAML -> PoolDocument.Form.YAML;
          case XML -> PoolDocument.Form.XML;
          default -> PoolDocument.Form.JSON;
        };
    try {
      String source = names.apply(item.source());
      run.add(new PoolDocument(source, item.line(), group(item), form, bytes));
    } catch (IOException failed) {
      throw new UnwritableException("the tables", failed);
    } catch (FaultException refused) {
      // The pool refuses the run, whatever the document: no mistake, and it says why.
      throw new UsageException(refused.faults().get(0).toString());
    } catch (RuntimeException mistake) {
      // It met a whole batch: to go on would meet it again with every document.
      throw new UnwritableException(
          "the tables", new IOException(Messages.internal(mistake), mistake));
    }
  }

  /** The lines of a file belong together, and so do the files of a folder. */
  private static String group(InputDocument item) {
    // In full, for persons without identifiers are told apart by it.
    Path file = Path.of(item.source().name()).toAbsolutePath().normalize();
    return String.valueOf(item.line() > 0 ? file : file.getParent());
  }
}
