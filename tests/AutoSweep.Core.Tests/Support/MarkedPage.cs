namespace AutoSweep.Core.Tests.Support;

/// <summary>A page of docs/ with marked parts that a test makes from the program and compares.</summary>
/// <param name="name">The page, from the top of the repository.</param>
internal sealed class MarkedPage(string name)
{
    private const string Fence = "```";

    public string Text => Repository.Text(name);

    /// <summary>Compares what stands between <c>&lt;!-- part … --&gt;</c> and <c>&lt;!-- /part --&gt;</c>.</summary>
    public void AssertPart(string part, string expected)
    {
        var (start, end) = (EndOfMark(part), Text.IndexOf($"<!-- /{part} -->", StringComparison.Ordinal));
        AssertSame(start, end, $"\n{expected}");
    }

    /// <summary>The block of code after <c>&lt;!-- part … --&gt;</c>.</summary>
    public string CodeAfter(string part)
    {
        var (start, end) = Code(part);
        return Text[start..end];
    }

    /// <summary>Compares the block of code after <c>&lt;!-- part … --&gt;</c>.</summary>
    public void AssertCodeAfter(string part, string expected)
    {
        var (start, end) = Code(part);
        AssertSame(start, end, expected + "\n");
    }

    private void AssertSame(int start, int end, string expected)
    {
        if (Environment.GetEnvironmentVariable("AUTOSWEEP_ACCEPT") == "1")
            File.WriteAllText(Repository.PathOf(name), Text[..start] + expected + Text[end..]);
        else
            Assert.Equal(expected, Text[start..end]);
    }

    private (int Start, int End) Code(string part)
    {
        var start = Text.IndexOf('\n', Text.IndexOf(Fence, EndOfMark(part), StringComparison.Ordinal)) + 1;
        return (start, Text.IndexOf(Fence, start, StringComparison.Ordinal));
    }

    private int EndOfMark(string part) =>
        Text.IndexOf("-->\n", Text.IndexOf($"<!-- {part}:", StringComparison.Ordinal), StringComparison.Ordinal) + 3;
}
