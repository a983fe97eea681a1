package org.isopter.task.page;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.isopter.model.finding.Finding;

/** How the catalogue is shown. */
public enum PageForm {
  TEXT(CatalogueText::of),
  JSON(CatalogueJson::of),
  MARKDOWN(CatalogueMarkdown::of);

  private final Function<List<Finding<?>>, String> page;

  PageForm(Function<List<Finding<?>>, String> page) {
    this.page = page;
  }

  /** Returns the page of some findings in this form. */
  public String page(List<Finding<?>> findings) {
    return page.apply(findings);
  }

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
