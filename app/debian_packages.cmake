# Debian packages by `cpack`: `soakwright` (command line, published rules, manual) and `soakwright-gui` (the window, and the
# report writer that the command line opens). Built twice with the same SOURCE_DATE_EPOCH they are the same bytes.
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME soakwright)
set(CPACK_PACKAGE_VERSION ${PROJECT_VERSION})
set(CPACK_PACKAGE_CONTACT "Soakwright maintainers <soakwright@maintainers.invalid>")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_COMPONENTS_GROUPING ONE_PER_GROUP)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_RELEASE 1)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ
    WORLD_EXECUTE)

set(CPACK_COMPONENTS_ALL command-line)
set(packages soakwright)
if(SOAKWRIGHT_GUI)
  list(APPEND CPACK_COMPONENTS_ALL window)
  list(APPEND packages soakwright-gui)
  install(FILES ${PROJECT_SOURCE_DIR}/resources/packaging/soakwright-gui.metainfo.xml
          DESTINATION ${CMAKE_INSTALL_DATADIR}/metainfo COMPONENT window)
  file(COPY ${PROJECT_SOURCE_DIR}/resources/packaging/soakwright-gui.1 DESTINATION ${PROJECT_BINARY_DIR}/packaging)
  execute_process(COMMAND ${GZIP} -9nkf ${PROJECT_BINARY_DIR}/packaging/soakwright-gui.1)
  install(FILES ${PROJECT_BINARY_DIR}/packaging/soakwright-gui.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1
          COMPONENT window)
endif()
set(CPACK_DEBIAN_COMMAND-LINE_PACKAGE_NAME soakwright)
set(CPACK_DEBIAN_COMMAND-LINE_PACKAGE_RECOMMENDS "soakwright-gui (= ${PROJECT_VERSION}-1)")
set(CPACK_DEBIAN_COMMAND-LINE_DESCRIPTION "compare weld heat treatment records with their procedure
 Reads temperature logs of weld heat treatments, measures heating rates, hold
 times and spreads between thermocouples, and compares each with its limit.
 This package has the command line.")
set(CPACK_DEBIAN_WINDOW_PACKAGE_NAME soakwright-gui)
set(CPACK_DEBIAN_WINDOW_PACKAGE_DEPENDS "soakwright (= ${PROJECT_VERSION}-1), fonts-dejavu-core")
set(CPACK_DEBIAN_WINDOW_DESCRIPTION "compare weld heat treatment records with their procedure - window
 Shows the traces of a weld heat treatment with the limits of its procedure,
 and writes the report. This package has the window and the report writer.")

# What Debian's policy asks of every package.
string(TIMESTAMP package_date "%a, %d %b %Y %H:%M:%S +0000" UTC)
foreach(package IN LISTS packages)
  configure_file(${PROJECT_SOURCE_DIR}/resources/packaging/changelog.in ${PROJECT_BINARY_DIR}/packaging/changelog.Debian @ONLY)
  execute_process(COMMAND ${GZIP} -9nkf ${PROJECT_BINARY_DIR}/packaging/changelog.Debian)
  if(package STREQUAL soakwright)
    set(component command-line)
  else()
    set(component window)
  endif()
  # Nothing is uploaded to Debian, so no bug there asks for it.
  file(WRITE ${PROJECT_BINARY_DIR}/packaging/${package} "${package}: initial-upload-closes-no-bugs\n")
  install(FILES ${PROJECT_BINARY_DIR}/packaging/${package} DESTINATION ${CMAKE_INSTALL_DATADIR}/lintian/overrides
          COMPONENT ${component})
  install(FILES ${PROJECT_SOURCE_DIR}/resources/packaging/copyright ${PROJECT_BINARY_DIR}/packaging/changelog.Debian.gz
          DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/${package} COMPONENT ${component} OPTIONAL)
endforeach()
install(DIRECTORY ${PROJECT_SOURCE_DIR}/resources/manual DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/soakwright
        COMPONENT command-line)
include(CPack)
