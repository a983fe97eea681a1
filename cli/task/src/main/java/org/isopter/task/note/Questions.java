package org.isopter.task.note;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.io.FailureText;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.Unread;
import org.isopter.model.note.habit.PossibleReading;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What is asked of whoever wrote a note, and the answers, as JSON.
 *
 * <p>A question holds its number, the item word for word, its place, why it is not clear, and the
 * readings with their numbers. An answer is an object with {@code item} and {@code answer}, the
 * number of a reading.
 */
public final class Questions {

  private static final JsonMapper JSON = JsonMapper.shared();
  private static final String ANSWERS = "a list of answers, in JSON";

  private Questions() {}

  /** Returns the questions of a note. */
  public static List<Unread> of(Note note) {
    return note.unread().stream().filter(Unread::isQuestion).toList();
  }

  /**
   * Writes the questions of a note into a file.
   *
   * @throws UnwritableException when that cannot be done
   */
  public static void write(Note note, Path file) {
    ArrayNode all = JSON.createArrayNode();
    for (Unread unread : of(note)) {
      ObjectNode question = all.addObject();
      question.put("question", all.size());
      question.put("item", unread.text());
      question.put("line", unread.line());
      question.put("column", unread.column());
      question.put("why", unread.why());
      ArrayNode readings = question.putArray("readings");
      for (PossibleReading reading : unread.readings()) {
        ObjectNode one = readings.addObject();
        one.put("answer", readings.size());
        one.put("choice", reading.choice());
        one.put("text", reading.text());
      }
    }
    AtomicFile.write(file, JSON.writerWithDefaultPrettyPrinter().writeValueAsString(all) + "\n");
  }

  /**
   * Returns the note with every answered item put in the form that the answer chose; refused when
   * the answers cannot be read, and when one is to nothing that the note asks.
   */
  public static Result<String> answered(String note, NoteReader reader, Path file) {
    String text = note;
    int number = 0;
    try {
      JsonNode all = JSON.readTree(Files.readString(file, UTF_8));
      if (!all.isArray()) {
        return refused(file.toString(), "no list", ANSWERS);
      }
      for (JsonNode answer : all) {
        number++;
        Result<String> next = answered(text, reader, answer, file + ", answer " + number);
        if (!next.isOk()) {
          return next;
        }
        text = next.orThrow();
      }
    } catch (IOException unreadable) {
      return refused(file.toString(), FailureText.of(unreadable), ANSWERS);
    } catch (JacksonException notJson) {
      return refused(file.toString(), "no JSON", ANSWERS);
    }
    return Result.ok(text);
  }

  private static Result<String> answered(
      String text, NoteReader reader, JsonNode answer, String place) {
    if (!answer.path("item").isString() || !answer.path("answer").isIntegralNumber()) {
      return refused(place, answer.toString(), "{\"item\": \"IOP 14/16\", \"answer\": 1}");
    }
    String item = answer.path("item").asString();
    List<Unread> questions = of(reader.read(text));
    Optional<Unread> asked =
        questions.stream().filter(unread -> unread.text().equals(item)).findFirst();
    if (asked.isEmpty()) {
      return refused(place, "\"" + item + "\"", items(questions));
    }
    List<PossibleReading> readings = asked.get().readings();
    int number = answer.path("answer").asInt(0);
    return number > 0 && number <= readings.size()
        ? Result.ok(NoteReader.answered(text, asked.get(), readings.get(number - 1)))
        : refused(place, answer.path("answer").toString(), "a number from 1 to " + readings.size());
  }

  private static String items(List<Unread> questions) {
    return questions.isEmpty()
        ? "no answer, for the note asks nothing more"
        : questions.stream()
            .map(unread -> "\"" + unread.text() + "\"")
            .collect(Collectors.joining(" or ", "an item that the note asks about: ", ""));
  }

  private static Result<String> refused(String place, String seen, String wanted) {
    return Result.refused(List.of(Fault.of(place, seen, wanted)));
  }
}
