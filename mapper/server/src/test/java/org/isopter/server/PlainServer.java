package org.isopter.server;

import ca.uhn.fhir.batch2.jobs.config.Batch2JobsConfig;
import ca.uhn.fhir.batch2.jobs.export.BulkDataExportProvider;
import ca.uhn.fhir.jpa.api.IDaoRegistry;
import ca.uhn.fhir.jpa.api.config.JpaStorageSettings;
import ca.uhn.fhir.jpa.api.config.ThreadPoolFactoryConfig;
import ca.uhn.fhir.jpa.api.dao.IFhirSystemDao;
import ca.uhn.fhir.jpa.api.model.HistoryCountModeEnum;
import ca.uhn.fhir.jpa.batch2.JpaBatch2Config;
import ca.uhn.fhir.jpa.binstore.DatabaseBinaryContentStorageSvcImpl;
import ca.uhn.fhir.jpa.config.r4.JpaR4Config;
import ca.uhn.fhir.jpa.config.util.ResourceCountCacheUtil;
import ca.uhn.fhir.jpa.dao.FulltextSearchSvcImpl;
import ca.uhn.fhir.jpa.dao.IFulltextSearchSvc;
import ca.uhn.fhir.jpa.dao.search.HSearchSortHelperImpl;
import ca.uhn.fhir.jpa.dao.search.IHSearchSortHelper;
import ca.uhn.fhir.jpa.model.config.PartitionSettings;
import ca.uhn.fhir.jpa.model.config.SubscriptionSettings;
import ca.uhn.fhir.jpa.provider.DaoRegistryResourceSupportedSvc;
import ca.uhn.fhir.jpa.provider.IJpaSystemProvider;
import ca.uhn.fhir.jpa.search.DatabaseBackedPagingProvider;
import ca.uhn.fhir.jpa.search.IStaleSearchDeletingSvc;
import ca.uhn.fhir.jpa.search.StaleSearchDeletingSvcImpl;
import ca.uhn.fhir.jpa.subscription.channel.config.SubscriptionChannelConfig;
import ca.uhn.fhir.jpa.subscription.match.config.SubscriptionProcessorConfig;
import ca.uhn.fhir.jpa.subscription.match.deliver.email.IEmailSender;
import ca.uhn.fhir.jpa.subscription.submit.config.SubscriptionSubmitterConfig;
import ca.uhn.fhir.jpa.util.ResourceCountCache;
import ca.uhn.fhir.rest.api.EncodingEnum;
import ca.uhn.fhir.rest.api.IResourceSupportedSvc;
import ca.uhn.fhir.rest.server.RestfulServer;
import ca.uhn.fhir.rest.server.provider.ResourceProviderFactory;
import ca.uhn.fhir.rest.server.util.ISearchParamRegistry;
import org.springframework.boot.autoconfigure.EnableAutoConfiguration;
import org.springframework.boot.autoconfigure.elasticsearch.ElasticsearchRestClientAutoConfiguration;
import org.springframework.boot.autoconfigure.jdbc.DataSourceAutoConfiguration;
import org.springframework.boot.autoconfigure.orm.jpa.HibernateJpaAutoConfiguration;
import org.springframework.boot.autoconfigure.quartz.QuartzAutoConfiguration;
import org.springframework.boot.autoconfigure.thymeleaf.ThymeleafAutoConfiguration;
import org.springframework.boot.web.servlet.ServletRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** A HAPI FHIR R4 server with its usual settings, over a database in memory, at {@code /fhir}. */
@Configuration
@EnableAutoConfiguration(
    exclude = {
      ThymeleafAutoConfiguration.class,
      ElasticsearchRestClientAutoConfiguration.class,
      QuartzAutoConfiguration.class,
      DataSourceAutoConfiguration.class,
      HibernateJpaAutoConfiguration.class
    })
@Import({
  JpaR4Config.class,
  ThreadPoolFactoryConfig.class,
  SubscriptionSubmitterConfig.class,
  SubscriptionProcessorConfig.class,
  SubscriptionChannelConfig.class,
  JpaBatch2Config.class,
  Batch2JobsConfig.class,
  ServerDatabase.class
})
class PlainServer {

  @Bean
  JpaStorageSettings jpaStorageSettings() {
    JpaStorageSettings settings = new JpaStorageSettings();
    settings.setReuseCachedSearchResultsForMillis(null);
    // Otherwise a count of all versions is a minute old.
    settings.setHistoryCountMode(HistoryCountModeEnum.COUNT_ACCURATE);
    // A job takes its next step when the one before it is done, not at the next full minute.
    settings.setJobFastTrackingEnabled(true);
    return settings;
  }

  @Bean
  SubscriptionSettings subscriptionSettings() {
    return new SubscriptionSettings();
  }

  @Bean
  PartitionSettings partitionSettings() {
    return new PartitionSettings();
  }

  @Bean
  DatabaseBinaryContentStorageSvcImpl databaseBinaryStorageSvc() {
    return new DatabaseBinaryContentStorageSvcImpl();
  }

  @Bean
  IEmailSender emailSender() {
    return details -> {};
  }

  @Bean
  IFulltextSearchSvc fullTextSearchSvc() {
    return new FulltextSearchSvcImpl();
  }

  @Bean
  IStaleSearchDeletingSvc staleSearchDeletingSvc() {
    return new StaleSearchDeletingSvcImpl();
  }

  @Bean
  IHSearchSortHelper searchSortHelper(ISearchParamRegistry registry) {
    return new HSearchSortHelperImpl(registry);
  }

  @Bean
  IResourceSupportedSvc resourceSupportedSvc(IDaoRegistry registry) {
    return new DaoRegistryResourceSupportedSvc(registry);
  }

  @Bean(name = "myResourceCountsCache")
  ResourceCountCache resourceCountsCache(IFhirSystemDao<?, ?> dao) {
    return ResourceCountCacheUtil.newResourceCountCache(dao);
  }

  @Bean
  DatabaseBackedPagingProvider databaseBackedPagingProvider() {
    DatabaseBackedPagingProvider pages = new DatabaseBackedPagingProvider();
    pages.setDefaultPageSize(50);
    pages.setMaximumPageSize(500);
    return pages;
  }

  @Bean
  RestfulServer restfulServer(
      IFhirSystemDao<?, ?> dao,
      IJpaSystemProvider system,
      ResourceProviderFactory resources,
      BulkDataExportProvider bulk,
      DatabaseBackedPagingProvider pages) {
    RestfulServer server = new RestfulServer(dao.getContext());
    server.registerProviders(resources.createProviders());
    server.registerProvider(system);
    server.registerProvider(bulk);
    server.setDefaultPrettyPrint(false);
    server.setDefaultResponseEncoding(EncodingEnum.JSON);
    server.setPagingProvider(pages);
    return server;
  }

  @Bean
  ServletRegistrationBean<RestfulServer> servlet(RestfulServer server) {
    ServletRegistrationBean<RestfulServer> servlet =
        new ServletRegistrationBean<>(server, "/fhir/*");
    servlet.setLoadOnStartup(1);
    return servlet;
  }
}
