package org.isopter.mapper.hapi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.BiFunction;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.Test;

/** R4 JSON is read where HAPI is not on the class path; what needs HAPI names the library. */
class WithoutHapiTest {

  private static final Path FILES = Path.of("src/test/resources/foreign/files/alone");

  @Test
  void readsJsonOfR4() throws Exception {
    assertEquals("1 examination", read("refraction-with-prism.json", "R4"));
  }

  @Test
  void namesTheLibraryThatXmlNeeds() throws Exception {
    String said = read("refraction-with-prism.xml", "R4");
    assertTrue(said.contains("ca.uhn.hapi.fhir:hapi-fhir-structures-r4 on"), said);
  }

  @Test
  void namesALibraryThatAnotherReleaseNeeds() throws Exception {
    String said = read("refraction-with-prism.json", "R5");
    assertTrue(said.contains("ca.uhn.hapi.fhir:hapi-fhir-"), said);
  }

  private static String read(String file, String release) throws Exception {
    Class<?> reads = new Without().loadClass(Reads.class.getName());
    @SuppressWarnings("unchecked")
    BiFunction<byte[], String, String> reader =
        (BiFunction<byte[], String, String>) reads.getDeclaredConstructor().newInstance();
    return reader.apply(Files.readAllBytes(FILES.resolve(file)), release);
  }

  /** Reads one document; made anew by a loader that knows no HAPI. */
  public static final class Reads implements BiFunction<byte[], String, String> {

    @Override
    public String apply(byte[] bytes, String release) {
      Result<Reading> result =
          new ForeignReader(Catalogue.standard(), Options.usual())
              .read(bytes, Release.valueOf(release));
      return result.isOk()
          ? result.orThrow().exams().size() + " examination"
          : result.faults().toString();
    }
  }

  /** Loads our classes once more, and none of HAPI's. */
  private static final class Without extends ClassLoader {

    Without() {
      super(WithoutHapiTest.class.getClassLoader());
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
      if (name.startsWith("ca.uhn.") || name.startsWith("org.hl7.")) {
        throw new ClassNotFoundException(name);
      }
      if (!name.startsWith("org.isopter.")) {
        return super.loadClass(name, resolve);
      }
      Class<?> loaded = findLoadedClass(name);
      return loaded == null ? defined(name) : loaded;
    }

    private Class<?> defined(String name) throws ClassNotFoundException {
      String file = name.replace('.', '/') + ".class";
      try (InputStream in = getParent().getResourceAsStream(file)) {
        if (in == null) {
          throw new ClassNotFoundException(name);
        }
        byte[] bytes = in.readAllBytes();
        return defineClass(name, bytes, 0, bytes.length);
      } catch (IOException unreadable) {
        throw new ClassNotFoundException(name, unreadable);
      }
    }
  }
}
