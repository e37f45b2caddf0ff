namespace AutoSweep.Worker.Page.AtBench;

/// <summary>The one big state of the screen.</summary>
/// <param name="Turn">Whose turn it is: its colour and its sign.</param>
/// <param name="Word">What the hands do now, in two or three words.</param>
/// <param name="Hint">A line more; empty where there is none.</param>
/// <param name="Output">The output that is written large; none where no output matters.</param>
/// <param name="Tone">Its tone in words; empty where none is known.</param>
public sealed record BigState(BenchTurn Turn, string Word, string Hint, int? Output, string Tone)
{
    /// <summary>What is said in words below, in full sentences; none where there is nothing to say.</summary>
    public string? Message { get; init; }
}
