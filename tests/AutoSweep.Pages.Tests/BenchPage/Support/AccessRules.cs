using Deque.AxeCore.Playwright;

namespace AutoSweep.Pages.Tests.BenchPage.Support;

/// <summary>The rules of WCAG 2.2 AA that a program can check (axe-core).</summary>
internal static class AccessRules
{
    private static readonly string[] Rules = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

    /// <summary>The rules that the page breaks as it stands, each with the element that breaks it.</summary>
    /// <param name="screen">The screen.</param>
    /// <param name="place">What is shown, for the message.</param>
    public static async Task<IEnumerable<string>> BrokenAsync(Screen screen, string place)
    {
        var found = await screen.Page.RunAxe(new Deque.AxeCore.Commons.AxeRunOptions
        {
            RunOnly = new() { Type = "tag", Values = [.. Rules] },
        });
        return found.Violations.SelectMany(broken => broken.Nodes.Select(node =>
            $"/{place}: {broken.Id}: {broken.Help}: {string.Join("; ", node.Any.Concat(node.All).Select(check => check.Message))} {node.Html}"));
    }
}
