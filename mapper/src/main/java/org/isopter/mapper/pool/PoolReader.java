package org.isopter.mapper.pool;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.fhir.FhirReader;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;

/**
 * Reads documents of any kind as examinations for tables: records, bundles of ours, and FHIR that
 * other systems wrote.
 *
 * <p>Bare resources, such as the lines of an NDJSON file of observations or the files of a folder,
 * are read together with the others of their group in the batch; every other document is read by
 * itself.
 *
 * <p>Safe for use by several threads at once.
 */
public final class PoolReader {

  private final RecordReader records;
  private final FhirReader ours;
  private final ForeignReader foreign;
  private final RawJson json;
  private final Release release;
  private final boolean refusesPools;
  private final OnErrors policy;
  private final String settings;

  /**
   * Makes a reader.
   *
   * @param options how FHIR of other systems is read
   * @param release the release of FHIR that XML is in, and JSON that is not R4
   */
  public PoolReader(Catalogue catalogue, Options options, Release release) {
    this(
        new RecordReader(catalogue),
        new FhirReader(catalogue),
        new ForeignReader(catalogue, options),
        new RawJson(options.limits()),
        release,
        false,
        OnErrors.NOT_LOOKED_FOR,
        options.zone()
            + (options.stated().isPresent() ? " stated " : " ")
            + options.window()
            + " "
            + options.limits()
            + " "
            + release);
  }

  private PoolReader(
      RecordReader records,
      FhirReader ours,
      ForeignReader foreign,
      RawJson json,
      Release release,
      boolean refusesPools,
      OnErrors policy,
      String settings) {
    this.records = records;
    this.ours = ours;
    this.foreign = foreign;
    this.json = json;
    this.release = release;
    this.refusesPools = refusesPools;
    this.policy = policy;
    this.settings = settings;
  }

  /**
   * Returns this reader, refusing what a pool without identities has written: pseudonyms of
   * pseudonyms would join with nothing, and times moved twice would be taken for times moved once.
   */
  public PoolReader refusingPools() {
    return new PoolReader(records, ours, foreign, json, release, true, policy, settings);
  }

  /** Returns this reader, looking for errors in every examination, whoever wrote it. */
  public PoolReader on(OnErrors other) {
    return new PoolReader(records, ours, foreign, json, release, refusesPools, other, settings);
  }

  /** Returns how this reads, as one text: with another, the same documents give other rows. */
  String settings() {
    return settings + " " + (policy == OnErrors.LEFT_OVER);
  }

  /** Reads the documents of one batch, using the processors that there are. */
  public PoolBatch read(List<PoolDocument> documents) {
    List<Step> steps = documents.parallelStream().map(this::step).toList();
    List<PoolBatch> batches = new ArrayList<>();
    Map<String, List<Step>> bare = new LinkedHashMap<>();
    for (Step step : steps) {
      if (step.bare().isPresent()) {
        bare.computeIfAbsent(step.document().group(), any -> new ArrayList<>()).add(step);
      } else {
        batches.add(step.batch());
      }
    }
    bare.values().forEach(group -> batches.add(together(group)));
    return Batches.sum(batches);
  }

  /** Reads documents each by itself, using the processors that there are. */
  PoolBatch readAlone(List<PoolDocument> documents) {
    return Batches.sum(documents.parallelStream().map(this::alone).toList());
  }

  /** Reads a document that has no neighbours: a resource that needs them is refused. */
  PoolBatch alone(PoolDocument document) {
    Step step = step(document);
    return step.bare()
        .map(resource -> Batches.notInABundle(document, resource))
        .orElse(step.batch());
  }

  /** What came of one document by itself: a batch, or a resource to be read with its neighbours. */
  private record Step(PoolDocument document, PoolBatch batch, Optional<Raw> bare) {}

  private Step step(PoolDocument document) {
    if (refusesPools && PoolLabel.isOn(document.bytes())) {
      return new Step(document, Batches.pooled(document), Optional.empty());
    }
    Result<Step> read =
        switch (document.form()) {
          case YAML -> record(document, RecordFormat.YAML);
          case XML ->
              foreign.read(document.bytes(), release).map(reading -> done(document, reading));
          case JSON -> json(document);
        };
    return read instanceof Result.Ok<Step> ok
        ? ok.value()
        : new Step(document, Batches.refused(document, read.faults()), Optional.empty());
  }

  private Result<Step> json(PoolDocument document) {
    Optional<Exam> own = own(document);
    if (own.isPresent()) {
      return Result.ok(ours(document, own.get()));
    }
    Result<Raw> parsed = json.read(document.bytes());
    if (!(parsed instanceof Result.Ok<Raw> ok)) {
      return Result.refused(parsed.faults());
    }
    Optional<String> type = ok.value().string("resourceType");
    if (type.isEmpty()) {
      return record(document, RecordFormat.JSON);
    }
    if (release != Release.R4) {
      return foreign.read(document.bytes(), release).map(reading -> done(document, reading));
    }
    boolean bare = !type.get().equals("Bundle");
    return Result.ok(
        bare
            ? new Step(document, Batches.NOTHING, Optional.of(ok.value()))
            : done(document, foreign.read(ok.value()), Neighbourhood.of(document, ok.value())));
  }

  /** Reads a bundle of ours without the way round through all that others may have meant. */
  private Optional<Exam> own(PoolDocument document) {
    String start =
        new String(
            document.bytes(), 0, Math.min(document.bytes().length, 40), StandardCharsets.UTF_8);
    return start.contains("\"Bundle\"")
        ? ours.read(document.bytes()) instanceof Result.Ok<Exam> ok
            ? Optional.of(ok.value())
            : Optional.empty()
        : Optional.empty();
  }

  private Result<Step> record(PoolDocument document, RecordFormat format) {
    return records.read(document.bytes(), format).map(exam -> ours(document, exam));
  }

  private Step ours(PoolDocument document, Exam exam) {
    return new Step(document, Batches.ours(document, exam, policy), Optional.empty());
  }

  private Step done(PoolDocument document, Reading reading) {
    return done(document, reading, Neighbourhood.of(document));
  }

  private Step done(PoolDocument document, Reading reading, Neighbourhood neighbourhood) {
    PoolBatch batch = ReadingBatch.of(reading, at -> document, 1, neighbourhood, policy);
    return new Step(document, batch, Optional.empty());
  }

  private PoolBatch together(List<Step> bare) {
    List<Raw> resources = bare.stream().map(step -> step.bare().orElseThrow()).toList();
    Reading reading = foreign.readTogether(resources);
    Neighbourhood folder = Neighbourhood.of(bare.get(0).document().group());
    return ReadingBatch.of(
        reading, number -> bare.get(number).document(), bare.size(), folder, policy);
  }
}
