namespace AutoSweep.Worker.Page.AtBench;

/// <summary>Lines that were written for a terminal, as a page shows them.</summary>
public static class QuestionWords
{
    /// <summary>The words without the indents and marks that a terminal needs.</summary>
    public static string Plain(string lines) =>
        string.Join(' ', lines.Split('\n').Select(line => line.Trim().TrimStart('>').Trim()).Where(line => line.Length > 0));

    /// <summary>Whether a line told that an answer could not be taken.</summary>
    public static bool IsComplaint(string line) => line.TrimStart().StartsWith(">>", StringComparison.Ordinal);
}
