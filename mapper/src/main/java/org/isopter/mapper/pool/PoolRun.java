package org.isopter.mapper.pool;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongConsumer;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.mapper.omop.OmopVocabulary;
import org.isopter.mapper.person.PersonsFile;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.privacy.SmallCells;
import org.isopter.mapper.privacy.StudyPeriod;
import org.isopter.mapper.store.PoolTables;
import org.isopter.mapper.store.TableStore;
import org.isopter.mapper.table.ExaminationsTable;
import org.isopter.mapper.table.EyeRow;
import org.isopter.mapper.table.PooledExam;
import org.isopter.mapper.table.Table;
import org.isopter.model.catalogue.Catalogue;

/**
 * Pools documents as tables, in constant memory: they are read in batches, and what was made of
 * them lies on disk. The folder appears when the run is finished; a run that is closed before
 * leaves nothing.
 *
 * <p>For one thread; it uses the processors that there are.
 */
public final class PoolRun implements AutoCloseable {

  /** Documents that are read together. */
  private static final int BATCH = 2_000;

  /** Examinations whose rows are made before they are put down. */
  private static final int PORTION = 100;

  /** Bytes from which on a batch waits for no more documents. */
  private static final long FULL = 8 << 20;

  private final PoolReader reader;
  private final PoolPlan plan;
  private final Table<EyeRow> eyes;
  private final PoolFolder folder;
  private final TableStore store;
  private final PoolSink sink;
  private final List<PoolDocument> waiting = new ArrayList<>();
  private ExamRows.Maker maker;
  private final StudyPeriod period = new StudyPeriod();
  private long bytes;
  private Optional<PoolHistory> history = Optional.empty();
  private LongConsumer progress = documents -> {};
  private Optional<PersonsFile> persons = Optional.empty();
  private Consumer<Remainder> left = one -> {};
  private Consumer<Flawed> flawed = one -> {};

  private PoolRun(PoolReader reader, PoolPlan plan, Table<EyeRow> eyes, PoolFolder folder)
      throws IOException, SQLException {
    this.reader = plan.deidentifier().isPresent() ? reader.refusingPools() : reader;
    this.plan = plan;
    this.eyes = eyes;
    this.maker = ExamRows.Maker.of(plan, eyes);
    this.folder = folder;
    this.store = TableStore.at(folder.file(PoolCompletion.WORKING));
    this.store.beginFilling();
    this.sink = PoolSink.begin(folder, plan, store, eyes);
  }

  /**
   * Begins a run.
   *
   * @throws org.isopter.model.value.FaultException when something is in the folder already, a trait
   *     of the plan is no column, or the vocabulary cannot be read
   * @throws UnwritableException when a file that lies elsewhere cannot be begun
   * @throws IOException when an input cannot be read or a table not be written
   */
  public static PoolRun begin(Catalogue catalogue, PoolReader reader, PoolPlan plan)
      throws IOException {
    Table<EyeRow> eyes = ExaminationsTable.table(catalogue);
    SmallCells.check(plan.traits(), eyes);
    plan.vocabulary().ifPresent(OmopVocabulary::check);
    PoolFolder folder = PoolFolder.begin(plan.folder(), plan.existing() != PoolPlan.Existing.KEPT);
    try {
      return new PoolRun(reader, plan, eyes, folder);
    } catch (SQLException failed) {
      folder.close();
      throw failure(failed);
    } catch (IOException | UnwritableException failed) {
      folder.close();
      throw failed;
    }
  }

  /** Returns this run, telling after each batch how many documents are done. */
  public PoolRun telling(LongConsumer listener) {
    progress = listener;
    return this;
  }

  /**
   * Returns this run, naming persons and examinations in the file of origins by an older key too:
   * it leads from the pseudonyms of older pools to those of this one.
   */
  public PoolRun rotatedFrom(Optional<Deidentifier> older) {
    older.ifPresent(one -> maker = maker.rotatedFrom(one));
    return this;
  }

  /** Returns this run, telling of everything that is left over. */
  public PoolRun reporting(Consumer<Remainder> listener) {
    left = listener;
    return this;
  }

  /** Returns this run, telling of every examination in which its reader found errors. */
  public PoolRun naming(Consumer<Flawed> listener) {
    flawed = listener;
    return this;
  }

  /** Returns this run, adding what a file says of the persons. */
  public PoolRun knowing(Optional<PersonsFile> file) {
    persons = file;
    return this;
  }

  /**
   * Takes a document; with enough of them waiting, they are read and laid out. One that the pool
   * that is added to has is skipped.
   *
   * @throws org.isopter.model.value.FaultException when a pool is added to that was made otherwise
   * @throws IOException when an input cannot be read or a table not be written
   */
  public void add(PoolDocument document) throws IOException {
    if (plan.isAdding() && !history().isNew(document)) {
      return;
    }
    waiting.add(document);
    bytes += document.bytes().length;
    if (waiting.size() >= BATCH || bytes >= FULL) {
      layOut();
    }
  }

  /**
   * Counts a document that could not be handed over as refused, and lists it as left over.
   *
   * @param source what the tables call its input
   * @param line the line in it, from 1; 0 where the rest of the input is meant
   * @param reason a word
   * @throws IOException when an input cannot be read or a table not be written
   */
  public void lose(String source, long line, String reason) throws IOException {
    leave(Batches.lost(source, line, reason));
  }

  /** Returns what was read before, and takes over what came of it, where that is not done yet. */
  private PoolHistory history() throws IOException {
    if (history.isEmpty()) {
      Optional<Path> older = folder.older();
      history = Optional.of(PoolHistory.of(older, plan, reader, persons, sink.columns()));
      if (older.isPresent()) {
        try {
          sink.resume(store, history.get().counts(), older.get());
        } catch (SQLException failed) {
          throw failure(failed);
        }
      }
    }
    return history.get();
  }

  /**
   * Reads what is waiting, writes the files, and gives the folder its name.
   *
   * @throws IOException when an input cannot be read or a table not be written
   */
  public PoolResult finish() throws IOException {
    if (plan.isAdding()) {
      history();
    }
    layOut();
    try {
      return new PoolCompletion(plan, folder, store, sink, eyes).of(period, history);
    } catch (SQLException failed) {
      throw failure(failed);
    }
  }

  /** Closes the run; what was not finished is gone. */
  @Override
  public void close() throws IOException {
    try (folder;
        store) {
      sink.close();
      sink.discard();
    } catch (SQLException failed) {
      throw failure(failed);
    }
  }

  private void layOut() throws IOException {
    PoolBatch batch = plan.isAdding() ? reader.readAlone(waiting) : reader.read(waiting);
    waiting.clear();
    bytes = 0;
    try {
      List<PooledExam> exams = batch.exams().stream().map(this::known).toList();
      if (plan.deidentifier().isPresent()) {
        exams.forEach(one -> period.take(one.exam().header().performed().toLocalDate()));
      }
      for (int from = 0; from < exams.size(); from += PORTION) {
        List<PooledExam> portion = exams.subList(from, Math.min(from + PORTION, exams.size()));
        sink.add(portion.parallelStream().map(maker::of).map(sink::pack).toList());
      }
      leave(batch);
    } catch (SQLException failed) {
      throw failure(failed);
    }
    progress.accept(sink.counts().documents());
  }

  private void leave(PoolBatch batch) throws IOException {
    batch.flawed().forEach(flawed);
    batch.left().forEach(left);
    sink.leave(batch);
  }

  private PooledExam known(PooledExam exam) {
    return persons.map(file -> file.apply(exam)).orElse(exam);
  }

  private static IOException failure(SQLException failed) {
    return new IOException("the tables could not be written: " + PoolTables.why(failed), failed);
  }
}
