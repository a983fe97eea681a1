package org.isopter.model.note;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The findings and the forms of the matrix of notes, and its cells. */
final class NoteMatrix {

  static final Path FOLDER = Path.of("src", "test", "resources", "matrix");

  private final List<MatrixFinding> findings;
  private final List<MatrixForm> forms;

  private NoteMatrix(List<MatrixFinding> findings, List<MatrixForm> forms) {
    this.findings = findings;
    this.forms = forms;
  }

  static NoteMatrix read() throws IOException {
    return new NoteMatrix(
        MatrixFinding.all(text("findings.txt")), MatrixForm.all(text("forms.txt")));
  }

  private static String text(String name) throws IOException {
    return Files.readString(FOLDER.resolve(name), StandardCharsets.UTF_8);
  }

  List<MatrixFinding> findings() {
    return findings;
  }

  List<MatrixForm> forms() {
    return forms;
  }

  /**
   * Returns the cells of a finding: all words for eyes under its first heading, some under others.
   */
  Stream<MatrixCell> cells(MatrixFinding finding) {
    List<String> headings = finding.headings();
    return headings.stream()
        .flatMap(
            heading ->
                forms.stream()
                    .filter(form -> form.suits(finding))
                    .flatMap(
                        form ->
                            form.cells(
                                finding,
                                heading,
                                forms.indexOf(form) + headings.indexOf(heading))));
  }
}
