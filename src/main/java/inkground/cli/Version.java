package inkground.cli;

import picocli.CommandLine.IVersionProvider;

/** The program's version, as the build wrote it into the jar. */
final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
        return new String[] {text()};
    }

    static String text() {
        String version = Version.class.getPackage().getImplementationVersion();
        return "Inkground " + (version == null ? "(development build)" : version);
    }
}
