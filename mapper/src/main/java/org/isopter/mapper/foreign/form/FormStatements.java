package org.isopter.mapper.foreign.form;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.observation.Translation;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.Raw;

/**
 * Turns the answers to a form of others into Observations that say no more than they do, for the
 * rules of Observations to read.
 *
 * <p>An answer whose question names a finding, alone or with the groups around it, is an
 * Observation. Any other answer may say how it was found: it becomes a component of each
 * Observation that it may be about, where the rules take it, or keep the value because of it.
 */
final class FormStatements {

  /** A group, or an answer that holds questions with the question that it answers. */
  private static final Pattern AROUND = Pattern.compile("/item/\\d+(/answer/\\d+)?$");

  private final FormRules rules;
  private final FormObservation builder;
  private final Map<String, Made> made = new HashMap<>();

  /** The findings that have a value, or a number that is not read. */
  private List<FormAnswer> measured = List.of();

  /** Where the answers stand that are read as a part of a finding. */
  private final Set<String> taken = new HashSet<>();

  private final List<FormAnswer> answers;
  private final List<FormAnswer> groups;

  /** An answer as an Observation, and whether its name is that of a finding. */
  private record Made(Raw.Obj observation, boolean finding) {}

  private FormStatements(FormRules rules, FormObservation builder, FormWalk walk) {
    this.rules = rules;
    this.builder = builder;
    this.answers = walk.answers();
    this.groups = walk.groups();
  }

  /** Returns the Observations of a response, by where their answers stand in it. */
  static Map<String, Raw.Obj> of(
      Vocabulary vocabulary, FormRules rules, FormDefinition form, Raw.Obj response) {
    FormObservation builder = new FormObservation(vocabulary, form.form(), response);
    return new FormStatements(rules, builder, FormWalk.of(form, response)).read();
  }

  private Map<String, Raw.Obj> read() {
    List<FormAnswer> findings = new ArrayList<>();
    List<FormAnswer> others = new ArrayList<>();
    answers.forEach(each -> (isFinding(each) ? findings : others).add(each));
    others.removeIf(builder::isApart);
    for (FormAnswer group : groups) {
      boolean asks = others.stream().anyMatch(other -> other.group().equals(group.at()));
      if (asks && isFinding(group)) {
        findings.add(group);
      }
    }
    measured = findings;
    Map<String, Raw.Obj> first = observations(findings, beside(findings, others));
    // What is named as a finding and has no value that is read may say how another was found.
    List<FormAnswer> unread =
        findings.stream()
            .filter(
                each ->
                    each.answer().isPresent()
                        && !isRead(first.getOrDefault(each.at(), Raw.Obj.EMPTY)))
            .toList();
    List<FormAnswer> asides = unread.stream().filter(each -> !each.isNumber()).toList();
    List<FormAnswer> read = findings.stream().filter(each -> !unread.contains(each)).toList();
    List<FormAnswer> more = Stream.concat(others.stream(), asides.stream()).toList();
    measured = findings.stream().filter(each -> !asides.contains(each)).toList();
    Map<String, Raw.Obj> all = new LinkedHashMap<>(first);
    if (!asides.isEmpty()) {
      all.putAll(observations(read, beside(read, more)));
    }
    others.stream()
        .filter(other -> !taken.contains(other.at()) && !isOfGroup(other, read, all))
        .forEach(other -> all.put(other.at(), builder.alone(other)));
    return all;
  }

  /** What a group is made of has no meaning by itself, and is read with it. */
  private boolean isOfGroup(FormAnswer other, List<FormAnswer> read, Map<String, Raw.Obj> all) {
    return read.stream()
        .filter(each -> each.answer().isEmpty() && each.at().equals(other.group()))
        .anyMatch(each -> isRead(all.getOrDefault(each.at(), Raw.Obj.EMPTY)));
  }

  private boolean isRead(Raw.Obj observation) {
    Translation read = rules.read(observation);
    return !read.facts().isEmpty() || read.piece().isPresent();
  }

  private Map<String, Raw.Obj> observations(
      List<FormAnswer> findings, Map<FormAnswer, List<FormAnswer>> beside) {
    Map<String, Raw.Obj> all = new LinkedHashMap<>();
    for (FormAnswer each : findings) {
      all.put(each.at(), with(each, beside.getOrDefault(each, List.of())));
    }
    return all;
  }

  /**
   * Finds what stands beside each finding. What one of the findings in its reach takes is about
   * that one, and does not concern those that have no place for it.
   */
  private Map<FormAnswer, List<FormAnswer>> beside(
      List<FormAnswer> findings, List<FormAnswer> others) {
    Map<FormAnswer, List<FormAnswer>> sure = new LinkedHashMap<>();
    for (FormAnswer each : findings) {
      sure.put(
          each,
          others.stream()
              .filter(other -> isNear(each, reach(other)))
              .filter(other -> outcome(each, List.of(), other) == AnswerTrial.TAKEN)
              .toList());
    }
    Map<FormAnswer, List<FormAnswer>> beside = new LinkedHashMap<>();
    findings.forEach(each -> beside.put(each, new ArrayList<>()));
    for (FormAnswer other : others) {
      String reach = reach(other);
      Map<FormAnswer, AnswerTrial> tried = new LinkedHashMap<>();
      for (FormAnswer each : findings) {
        if (isNear(each, reach)) {
          List<FormAnswer> with = new ArrayList<>(sure.getOrDefault(each, List.of()));
          with.remove(other);
          tried.put(each, outcome(each, with, other));
        }
      }
      boolean isTaken = tried.containsValue(AnswerTrial.TAKEN);
      if (isTaken) {
        taken.add(other.at());
      }
      tried.forEach(
          (each, outcome) -> {
            if (outcome != AnswerTrial.NO_PLACE || !isTaken) {
              beside.getOrDefault(each, new ArrayList<>()).add(other);
            }
          });
    }
    return beside;
  }

  private AnswerTrial outcome(FormAnswer each, List<FormAnswer> with, FormAnswer other) {
    List<FormAnswer> all = Stream.concat(with.stream(), Stream.of(other)).toList();
    boolean far = !reach(other).equals(other.group());
    return AnswerTrial.of(rules.read(with(each, all)), builder.place(other, far));
  }

  private Raw.Obj with(FormAnswer each, List<FormAnswer> beside) {
    Set<FormAnswer> far = new HashSet<>();
    for (FormAnswer other : beside) {
      if (!reach(other).equals(other.group())) {
        far.add(other);
      }
    }
    return builder.with(alone(each), beside, far);
  }

  private static boolean isNear(FormAnswer each, String reach) {
    return each.isIn(reach) || each.at().equals(reach);
  }

  /**
   * An answer tells of its group; of the group around, where no finding is in its own. What is said
   * of an eye tells of no other.
   */
  private String reach(FormAnswer other) {
    String group = other.group();
    int label = other.path().size() - 2;
    while (label >= 0 && !holds(group) && !builder.isEye(other.path().get(label))) {
      group = AROUND.matcher(group).replaceFirst("");
      label--;
    }
    return group;
  }

  private boolean holds(String group) {
    return measured.stream().anyMatch(each -> isNear(each, group));
  }

  private boolean isFinding(FormAnswer each) {
    return made(each).finding();
  }

  /** Returns an answer as an Observation under the name that its question has as a finding. */
  private Raw.Obj alone(FormAnswer each) {
    return made(each).observation();
  }

  private Made made(FormAnswer each) {
    return made.computeIfAbsent(each.at(), any -> make(each));
  }

  private Made make(FormAnswer each) {
    Raw.Obj own = builder.alone(each);
    if (rules.names(own)) {
      return new Made(own, true);
    }
    return builder.joined(each).stream()
        .filter(joined -> rules.names(joined) && isRead(joined))
        .findFirst()
        .map(joined -> new Made(joined, true))
        .orElseGet(() -> new Made(own, false));
  }
}
