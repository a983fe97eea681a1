package org.isopter.server;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.jpa.api.config.JpaStorageSettings;
import ca.uhn.fhir.jpa.config.HibernatePropertiesProvider;
import ca.uhn.fhir.jpa.config.util.HapiEntityManagerFactoryUtil;
import ca.uhn.fhir.jpa.model.dialect.HapiFhirH2Dialect;
import jakarta.persistence.EntityManagerFactory;
import java.util.Properties;
import javax.sql.DataSource;
import org.apache.commons.dbcp2.BasicDataSource;
import org.hibernate.cfg.AvailableSettings;
import org.hibernate.dialect.Dialect;
import org.springframework.beans.factory.config.ConfigurableListableBeanFactory;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Primary;
import org.springframework.orm.jpa.JpaTransactionManager;
import org.springframework.orm.jpa.LocalContainerEntityManagerFactoryBean;
import org.springframework.transaction.annotation.EnableTransactionManagement;

/** The database of the server: H2 in memory, gone with the process. */
@Configuration
@EnableTransactionManagement
class ServerDatabase {

  @Bean
  DataSource dataSource() {
    BasicDataSource source = new BasicDataSource();
    source.setUrl("jdbc:h2:mem:isopter;DB_CLOSE_DELAY=-1");
    source.setUsername("sa");
    source.setPassword("");
    source.setMaxTotal(20);
    return source;
  }

  @Primary
  @Bean
  LocalContainerEntityManagerFactoryBean entityManagerFactory(
      DataSource source,
      ConfigurableListableBeanFactory beans,
      FhirContext context,
      JpaStorageSettings settings) {
    LocalContainerEntityManagerFactoryBean factory =
        HapiEntityManagerFactoryUtil.newEntityManagerFactory(beans, context, settings);
    Properties properties = new Properties();
    properties.put(AvailableSettings.DIALECT, HapiFhirH2Dialect.class.getName());
    properties.put(AvailableSettings.HBM2DDL_AUTO, "create");
    properties.put(AvailableSettings.STATEMENT_BATCH_SIZE, "20");
    properties.put(AvailableSettings.USE_QUERY_CACHE, "false");
    properties.put(AvailableSettings.USE_SECOND_LEVEL_CACHE, "false");
    properties.put("hibernate.search.enabled", "false");
    factory.setPersistenceUnitName("HAPI_PU");
    factory.setJpaProperties(properties);
    factory.setDataSource(source);
    return factory;
  }

  @Primary
  @Bean
  HibernatePropertiesProvider hibernatePropertiesProvider() {
    return new HibernatePropertiesProvider() {
      @Override
      public Dialect getDialect() {
        return new HapiFhirH2Dialect();
      }
    };
  }

  @Primary
  @Bean
  JpaTransactionManager transactionManager(EntityManagerFactory factory) {
    JpaTransactionManager manager = new JpaTransactionManager();
    manager.setEntityManagerFactory(factory);
    return manager;
  }
}
