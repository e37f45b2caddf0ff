using System.Text.RegularExpressions;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>What a component does when something on it is pressed, sent or chosen, read from its own text.</summary>
/// <param name="file">The component's file name.</param>
/// <param name="text">Its text.</param>
internal sealed partial class PageHandlers(string file, string text)
{
    // Handed to the component around it, whose own handler is looked at in its own file; or done only by the screen that holds the controls.
    private static readonly string[] Guards = ["ActAsync(", ".InvokeAsync("];

    // What a handler may not touch before it is guarded.
    private static readonly string[] Changing = ["Desk.", "Ledger", ".Append", "Dialogue", "File.", "await "];

    /// <summary>Each handler: the file's name and what it does.</summary>
    public IEnumerable<string> All => Handler().Matches(text).Select(match => $"{file}: {Plain(match.Groups[1].Value)}");

    /// <summary>Those that nothing guards.</summary>
    public IEnumerable<string> Unguarded => Handler().Matches(text).Select(match => Plain(match.Groups[1].Value))
        .Where(handler => !IsGuarded(handler, 4)).Select(handler => $"{file}: {handler}");

    private bool IsGuarded(string act, int depth)
    {
        var guard = Guards.Select(one => act.IndexOf(one, StringComparison.Ordinal)).Where(at => at >= 0).DefaultIfEmpty(-1).Min();
        if (guard >= 0)
            return !Changing.Any(act[..guard].Contains);
        // An EventCallback of its own, or a method of its own, or several.
        var named = Name().Matches(act).Select(match => match.Value).ToList();
        return depth > 0 && named.Any(name => IsCallback(name) || (Body(name) is { } body && IsGuarded(body, depth - 1)));
    }

    private bool IsCallback(string name) => Regex.IsMatch(text, $@"public EventCallback(<.*>)? {name} ");

    private string? Body(string name) => Regex.Match(text, $@"private (?:async )?Task {name}\(.*?\)\s*(?:=>|\n    \{{)(.*?)(?=\n\n|\n    \}}|\z)", RegexOptions.Singleline) is
        { Success: true } found ? found.Groups[1].Value : null;

    private static string Plain(string handler) => handler.Trim().TrimStart('@');

    // @onclick, @onsubmit, @onchange, and every parameter that is named after what happens: OnPress, OnChange, OnKey.
    [GeneratedRegex("(?:@on[a-z]+|\\bOn[A-Z][A-Za-z]*)=\"((?:@\\(.*?\\)(?=\"[ />\\n]))|[^\"]*)\"")]
    private static partial Regex Handler();

    [GeneratedRegex("\\b[A-Z][A-Za-z]*\\b")]
    private static partial Regex Name();
}
