package org.isopter.profiles;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.profiles.artefact.ArtefactText;
import org.isopter.profiles.artefact.Artefacts;
import org.isopter.profiles.artefact.view.View;
import org.junit.jupiter.api.Test;

/** The checked-in artefacts are what the catalogue says. */
class ArtefactFilesTest {

  private static final Path FOLDER = Path.of("src/main/resources/org/isopter/profiles/package");

  @Test
  void theCheckedInFilesAreThoseOfTheCatalogue() throws IOException {
    Map<String, String> files = new TreeMap<>();
    Artefacts.of(Catalogue.standard())
        .resources()
        .forEach(each -> files.put(ArtefactText.fileName(each), ArtefactText.json(each)));
    Golden.check(FOLDER, files);
  }

  @Test
  void theCheckedInViewsAreThoseOfTheCatalogue() throws IOException {
    Map<String, String> files = new TreeMap<>();
    View.of(Catalogue.standard()).forEach(each -> files.put(each.fileName(), each.json()));
    Golden.check(FOLDER.resolve("view"), files);
  }
}
