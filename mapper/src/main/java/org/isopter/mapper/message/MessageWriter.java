package org.isopter.mapper.message;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Status;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Writes an examination as a message with results: ORU^R01 of HL7 version 2.5.1 in UTF-8. The same
 * examination always gives the same bytes.
 *
 * <p>The message is read again before it is given out, by the reader of what other systems send. It
 * holds the facts that this reader makes of it again, and no other; what else the record says is
 * named beside it.
 */
public final class MessageWriter {

  private static final FhirWriter WRITER = FhirWriter.of(BundleKind.COLLECTION);

  private final ForeignReader reader = new ForeignReader(Catalogue.standard(), Options.usual());

  /**
   * Returns the message, or why there is none of this examination. That of one that was entered in
   * error takes back each result of the message that was sent of it before.
   */
  public Result<ResultMessage> write(Exam exam) {
    return write(exam, Optional.empty());
  }

  /**
   * Returns a message that also takes back what was sent before and holds no more.
   *
   * @param former the record as it was sent before: the same, or the one that this one amends
   */
  public Result<ResultMessage> writeAfter(Exam exam, Exam former) {
    return write(exam, Optional.of(former));
  }

  private Result<ResultMessage> write(Exam exam, Optional<Exam> former) {
    if (exam.header().status() == Status.ENTERED_IN_ERROR) {
      Exam sent = former.orElse(exam);
      return composed(sent, List.of()).map(MessageWriter::takenBack);
    }
    if (former.isEmpty()) {
      return composed(exam, List.of()).flatMap(message -> checked(exam, message));
    }
    return composed(former.get(), List.of())
        .flatMap(
            old ->
                composed(exam, sent(exam, former.get(), old))
                    .map(message -> message.takingBack(old.order()))
                    .flatMap(message -> checked(exam, message)));
  }

  private static List<String> sent(Exam exam, Exam former, MessageText old) {
    boolean same =
        exam.header().id().equals(former.header().id())
            && exam.header().subject().identifier().equals(former.header().subject().identifier());
    return same ? old.order().subIds() : List.of();
  }

  private static ResultMessage takenBack(MessageText sent) {
    return new ResultMessage(sent.takenBack().text(), 0, List.of());
  }

  /** The whole is read as it is given out. */
  private Result<ResultMessage> checked(Exam exam, MessageText message) {
    List<Reread> wanted = wanted(exam);
    return Reread.of(message.text(), reader)
        .flatMap(
            read -> {
              List<Reread> back = new ArrayList<>(read);
              message.written().forEach(at -> back.remove(wanted.get(at)));
              int left = read.size() - message.written().size();
              return back.isEmpty() && left == 0
                  ? Result.ok(
                      new ResultMessage(
                          message.text(),
                          message.written().size(),
                          LeftOut.of(exam, message.written())))
                  : Result.refused(
                      Fault.of("findings", back.toString(), "nothing but what the record says"));
            });
  }

  /** Tries the forms of each fact in turn, until all that stand there come back as they were. */
  private Result<MessageText> composed(Exam exam, List<String> sent) {
    Optional<Identifier> subject = exam.header().subject().identifier();
    if (subject.isEmpty()) {
      return Result.refused(Fault.of("subject", "no identifier", "the identifier of a person"));
    }
    List<Reread> wanted = wanted(exam);
    Map<Integer, Deque<Raw.Obj>> forms = forms(exam);
    while (true) {
      SortedMap<Integer, Raw.Obj> chosen = new TreeMap<>();
      forms.forEach((at, left) -> chosen.put(at, left.getFirst()));
      MessageText message = MessageText.of(exam, subject.get(), chosen, sent);
      Result<List<Reread>> read = Reread.of(message.text(), reader);
      if (!(read instanceof Result.Ok<List<Reread>> ok)) {
        return Result.refused(read.faults());
      }
      List<Reread> back = new ArrayList<>(ok.value());
      List<Integer> same =
          message.written().stream().filter(at -> back.remove(wanted.get(at))).toList();
      if (same.size() == chosen.size()) {
        return Result.ok(message);
      }
      forms.forEach((at, left) -> dropFirst(left, same.contains(at)));
      forms.values().removeIf(Deque::isEmpty);
    }
  }

  private static void dropFirst(Deque<Raw.Obj> forms, boolean stays) {
    if (!stays) {
      forms.removeFirst();
    }
  }

  private static Map<Integer, Deque<Raw.Obj>> forms(Exam exam) {
    Map<Integer, Deque<Raw.Obj>> forms = new TreeMap<>();
    for (Raw.Obj observation : observations(exam)) {
      forms.put(forms.size(), new ArrayDeque<>(Forms.of(observation)));
    }
    return forms;
  }

  /** The instrument has no place in a message from which it would be read again. */
  private static List<Reread> wanted(Exam exam) {
    return Reread.of(exam).stream()
        .map(one -> new Reread(one.fact().withoutDevice(), one.time(), one.subject()))
        .toList();
  }

  /** Returns the observations of the facts, in their order; the first of a bundle is the panel. */
  private static List<Raw.Obj> observations(Exam exam) {
    return RawJson.OWN.read(WRITER.write(exam)).orThrow().objects("entry").stream()
        .flatMap(entry -> entry.object("resource").stream())
        .filter(one -> one.string("resourceType").orElse("").equals("Observation"))
        .skip(1)
        .toList();
  }
}
