package org.isopter.sheet;

import java.util.stream.Stream;
import org.teavm.classlib.ResourceSupplier;
import org.teavm.classlib.ResourceSupplierContext;

/** Puts the files of phrases, and that of the version, into the script when it is compiled. */
@SuppressWarnings("deprecation") // The compiler has no other way to hold a resource.
public final class HeldFiles implements ResourceSupplier {

  @Override
  public String[] supplyResources(ResourceSupplierContext context) {
    return Stream.concat(
            Stream.of("en", "fr", "de", "es")
                .map(language -> "org/isopter/model/note/word/phrases-" + language + ".tsv"),
            Stream.of("org/isopter/mapper/fhir/version.properties"))
        .toArray(String[]::new);
  }
}
