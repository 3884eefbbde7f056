package org.stook.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CommandLineTest {
    @TempDir
    private Path home;

    private final StringWriter err = new StringWriter();

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "                                 | say what to do: run or demo",
                "fly                              | 'fly'",
                "run                              | '--home=DIR'",
                "run --home HOME --port 70000     | --port must be 0 to 65535, got 70000",
                "run --home HOME --workers 0      | --workers must be 1 to 64, got 0",
                "run --home HOME --station bad    | KEY=VALUE",
                "run --home HOME --station ../a=b | a name of letters, digits, - and _, got '../a'",
                "run --home HOME --worker-memory 2 | --worker-memory needs a size such as 1500m or 4g, got '2'",
                "run --home HOME --set quiet      | --set needs KEY=VALUE, got 'quiet'",
                "demo --size large                | --size needs pixels such as 1200x800, got 'large'",
                "demo --frames 2                  | --frames must be 3 to 60, got 2",
                "demo --seconds-per-frame -1      | --seconds-per-frame must be 0 to 60, got -1.0",
                "demo --time-limit 0              | --time-limit must be above 0, got 0",
            })
    void aWrongCommandLineIsNamed(String arguments, String problem) {
        assertThat(execute(arguments == null ? "" : arguments)).isEqualTo(ExitCode.USAGE);
        assertThat(err.toString()).contains(problem).contains("--help");
    }

    @Test
    void aMissingJarIsNamedWithWhatToDo() {
        assertThat(execute("run --home HOME --service-jar HOME/none.jar")).isEqualTo(ExitCode.FAILED);
        assertThat(err.toString())
                .contains("there is no service jar at " + home.resolve("none.jar"))
                .contains("--service-jar");
    }

    private int execute(String arguments) {
        String[] words = arguments.isBlank()
                ? new String[0]
                : arguments.trim().replace("HOME", home.toString()).split(" +");
        return Main.commandLine().setErr(new PrintWriter(err, true)).execute(words);
    }
}
