package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.testfx.framework.junit5.ApplicationTest;

/** Colours of the window come from named tokens only. */
class StyleSheetTest extends ApplicationTest {
    private static final Pattern TOKEN = Pattern.compile("(-ink-[a-z-]+):\\s*[^;]+;");
    private static final Pattern USE = Pattern.compile("-ink-[a-z-]+");
    private static final Pattern LITERAL = Pattern.compile(
            "#[0-9a-fA-F]{3,8}\\b|\\b(?:rgba?|hsba?)\\(|(?<![\\w-])(?:white|black|gr[ae]y|red)(?![\\w-])");

    private Stage stage;

    @Override
    public void start(Stage onStage) {
        stage = onStage;
    }

    private static String sheet(String name) throws Exception {
        try (var in = StyleSheetTest.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replaceAll("(?s)/\\*.*?\\*/", "");
        }
    }

    private static Set<String> tokens(String sheet) {
        return TOKEN.matcher(sheet)
                .results()
                .map(found -> found.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void bothThemesNameTheSameTokens() throws Exception {
        assertThat(tokens(sheet("light.css"))).isNotEmpty().isEqualTo(tokens(sheet("dark.css")));
    }

    @Test
    void rulesUseTokensAndEveryTokenIsUsed() throws Exception {
        String rules = sheet("viewer.css");
        Set<String> named = tokens(sheet("light.css"));
        named.addAll(tokens(rules));
        String uses = TOKEN.matcher(rules).replaceAll("");
        assertThat(LITERAL.matcher(uses).results().map(MatchResult::group)).isEmpty();
        Set<String> used =
                USE.matcher(uses).results().map(MatchResult::group).collect(Collectors.toCollection(TreeSet::new));
        assertThat(used).isEqualTo(named);
    }

    @Test
    void aTooltipInItsOwnWindowKnowsTheTokens() {
        interact(() -> {
            Label label = new Label("sleeve");
            Tooltip tip = new Tooltip("One sentence.");
            label.setTooltip(tip);
            Scene scene = new Scene(label);
            for (String name : new String[] {"light.css", "viewer.css"}) {
                scene.getStylesheets()
                        .add(StyleSheetTest.class.getResource(name).toExternalForm());
            }
            stage.setScene(scene);
            stage.show();
            tip.show(label, 5, 5);
            tip.getScene().getRoot().applyCss();
            Region ground = (Region) tip.getSkin().getNode();
            assertThat(ground.getBackground().getFills().get(0).getFill()).isEqualTo(Color.web("#202020"));
            tip.hide();
        });
    }
}
