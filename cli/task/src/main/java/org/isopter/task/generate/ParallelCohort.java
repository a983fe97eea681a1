package org.isopter.task.generate;

import java.util.ArrayDeque;
import java.util.Queue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.function.Function;
import org.isopter.model.exam.Exam;
import org.isopter.model.simulate.Cohort;

/** Makes the examinations of a cohort on every core and hands them on in the order of persons. */
public final class ParallelCohort {

  private static final int PERSONS = 50;
  private static final int CORES = Runtime.getRuntime().availableProcessors();

  /** Batches made ahead of the one that is handed on; they bound what is held in memory. */
  private static final int AHEAD = 2 * CORES;

  private final Cohort cohort;
  private final Function<Exam, String> form;

  public ParallelCohort(Cohort cohort, Function<Exam, String> form) {
    this.cohort = cohort;
    this.form = form;
  }

  /** The lines of some persons, and how many there are. */
  private record Batch(String lines, int exams) {}

  /** Hands on the lines of all persons and returns how many examinations there were. */
  public int each(Consumer<String> to) {
    ExecutorService cores = Executors.newFixedThreadPool(CORES);
    try {
      return run(cores, to);
    } finally {
      cores.shutdownNow();
    }
  }

  private int run(ExecutorService cores, Consumer<String> to) {
    Queue<Future<Batch>> waiting = new ArrayDeque<>();
    int exams = 0;
    for (long first = 0; first < cohort.persons() || !waiting.isEmpty(); first += PERSONS) {
      if (first < cohort.persons()) {
        int from = (int) first;
        waiting.add(cores.submit(() -> batch(from)));
      }
      if (waiting.size() > AHEAD || first + PERSONS >= cohort.persons()) {
        exams += hand(waiting.remove(), to);
      }
    }
    return exams;
  }

  private static int hand(Future<Batch> made, Consumer<String> to) {
    try {
      Batch batch = made.get();
      to.accept(batch.lines());
      return batch.exams();
    } catch (ExecutionException failed) {
      throw new IllegalStateException(failed.getCause());
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(stopped);
    }
  }

  private Batch batch(int first) {
    StringBuilder lines = new StringBuilder();
    int exams = 0;
    int end = (int) Math.min((long) first + PERSONS, cohort.persons());
    for (int person = first; person < end; person++) {
      for (Exam exam : cohort.exams(person)) {
        lines.append(form.apply(exam)).append('\n');
        exams++;
      }
    }
    return new Batch(lines.toString(), exams);
  }
}
