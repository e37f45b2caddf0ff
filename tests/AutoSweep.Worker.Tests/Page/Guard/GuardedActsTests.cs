using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page.Guard;

/// <summary>Every button, form and file field of the page: what it does goes through the check that this screen holds the controls, or changes nothing.</summary>
public sealed class GuardedActsTests
{
    // What changes nothing but the screen that it is on: a form's own fields, a place to go to, a question to the controls themselves.
    private static readonly string[] ChangeNothing =
    [
        "Bench.razor: choice => _handsFree = choice",
        "Bench.razor: page => Pages.NavigateTo(page)",
        "Bench.razor: page => Pages.NavigateTo(page)",
        "Bench.razor: page => Pages.NavigateTo(page)",
        "BoxDials.razor: () => { Box.Dials.Remove(dial); }",
        "BoxDials.razor: () => { Box.Dials.Add(new()); }",
        "ControlsStrip.razor: () => Controls.HandOverFrom(Rights.Screen)",
        "ControlsStrip.razor: () => Controls.Keep(Rights.Screen)",
        "ControlsStrip.razor: () => Controls.Ask(Rights.Screen)",
        "JobsPage.razor: (() => Places.NavigateTo(\"/\"))",
        "RecordPage.razor: ReadAsync",
        "ShopCurveForm.razor: DrawAsync",
        "WiringPage.razor: Take",
    ];

    [Fact]
    public void Whatever_changes_anything_needs_the_controls()
    {
        var pages = Pages().ToList();

        Assert.InRange(pages.Sum(page => page.All.Count()), 60, 200);
        Assert.Equal(ChangeNothing.Order(StringComparer.Ordinal), pages.SelectMany(page => page.Unguarded).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("<KeyButton OnPress=\"Desk.StopAsync\">Stop</KeyButton>")]
    [InlineData("<KeyButton OnPress=\"() => Desk.StopAsync()\">Stop</KeyButton>")]
    [InlineData("<form @onsubmit=\"SaveAsync\" @onsubmit:preventDefault>\n    private Task SaveAsync() => Desk.StopAsync();\n\n    private Task OtherAsync() => ActAsync(Go);\n")]
    [InlineData("<button @onclick=\"SaveAsync\">\n    private async Task SaveAsync()\n    {\n        Desk.Tell();\n        await ActAsync(Go);\n    }\n")]
    [InlineData("<InputFile OnChange=\"Take\" />\n    private Task Take(InputFileChangeEventArgs sent) => Shelf.KeepAsync(sent);\n")]
    public void One_that_is_not_guarded_is_noticed(string component) => Assert.Single(new PageHandlers("Planted.razor", component).Unguarded);

    [Theory]
    [InlineData("<KeyButton OnPress=\"() => ActAsync(Desk.StopAsync)\">Stop</KeyButton>")]
    [InlineData("<form @onsubmit=\"SaveAsync\" @onsubmit:preventDefault>\n    private Task SaveAsync() => ChangeAsync(Go);\n\n    private Task ChangeAsync(Action change) => ActAsync(change);\n")]
    [InlineData("<KeyButton OnPress=\"OnStop\">Stop</KeyButton>\n    public EventCallback OnStop { get; set; }\n")]
    public void One_that_is_guarded_or_handed_on_is_not(string component) => Assert.Empty(new PageHandlers("Planted.razor", component).Unguarded);

    private static IEnumerable<PageHandlers> Pages() => Directory
        .EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "..", "..", "..", "..", "src", "AutoSweep.Worker", "Page"), "*.razor", SearchOption.AllDirectories)
        .Select(path => new PageHandlers(Path.GetFileName(path), File.ReadAllText(path)));
}
