package org.isopter.mapper.foreign.form;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.finding.Finding;
import org.isopter.model.form.Form;
import org.isopter.model.form.FormItem;
import org.isopter.model.value.Site;

/** The questions of the form by their names. */
final class FormNames {

  private final Map<String, FormItem> questions = new HashMap<>();
  private final Set<String> findings = new HashSet<>();
  private final Set<String> entries = new HashSet<>();

  FormNames(Catalogue catalogue) {
    for (Finding<?> finding : catalogue.all()) {
      findings.add(finding.id());
      for (Site site : finding.sites()) {
        entries.add(Form.name(finding, site));
        Form.questions(finding)
            .forEach(question -> questions.put(Form.name(finding, site, question), question));
      }
    }
  }

  Optional<FormItem> question(String name) {
    return Optional.ofNullable(questions.get(name));
  }

  /** Says whether a name is that of a finding at a site. */
  boolean isEntry(String name) {
    return entries.contains(name);
  }

  /** Says whether a name is that of a group of the form. */
  boolean isGroup(String name) {
    return entries.contains(name) || findings.contains(name);
  }

  /** Returns the name of the finding at a site that a question is about. */
  static String entry(String question) {
    return question.substring(0, question.lastIndexOf('/'));
  }
}
