package org.isopter.task.note;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
   * the answers cannot be read.
   */
  public static Result<String> answered(String note, NoteReader reader, Path file) {
    String text = note;
    try {
      for (JsonNode answer : JSON.readTree(Files.readString(file, UTF_8))) {
        Result<String> next = answered(text, reader, answer);
        if (!next.isOk()) {
          return next;
        }
        text = next.orThrow();
      }
    } catch (IOException unreadable) {
      String why = FailureText.of(unreadable);
      return Result.refused(List.of(Fault.of(file.toString(), why, "a list of answers")));
    } catch (JacksonException notJson) {
      return Result.refused(List.of(Fault.of(file.toString(), "no JSON", "a list of answers")));
    }
    return Result.ok(text);
  }

  private static Result<String> answered(String text, NoteReader reader, JsonNode answer) {
    String item = answer.path("item").asString("");
    int number = answer.path("answer").asInt(0);
    return of(reader.read(text)).stream()
        .filter(unread -> unread.text().equals(item))
        .filter(unread -> number > 0 && number <= unread.readings().size())
        .findFirst()
        .map(unread -> NoteReader.answered(text, unread, unread.readings().get(number - 1)))
        .map(Result::ok)
        .orElseGet(
            () ->
                Result.refused(
                    List.of(
                        Fault.of(
                            "answers",
                            "answer " + number + " to \"" + item + "\"",
                            "an item that the note asks about, and the number of a reading"))));
  }
}
