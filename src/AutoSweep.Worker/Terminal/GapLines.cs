namespace AutoSweep.Worker.Terminal;

/// <summary>Tells the person at a terminal of an instrument that is missing, and of its return.</summary>
/// <param name="line">Takes a line.</param>
/// <param name="bell">Takes the bell's character.</param>
public sealed class GapLines(Action<string> line, Action<string> bell)
{
    private string? _said;

    /// <summary>A gap begins: two beeps, as for every question.</summary>
    /// <param name="words">What is missing, and what to look at.</param>
    public void Missing(string words)
    {
        bell("\a\a");
        StillMissing(words);
    }

    /// <summary>Another try has failed; told only where it found another thing than the last.</summary>
    /// <param name="words">What is missing, and what to look at.</param>
    public void StillMissing(string words)
    {
        if (words != _said)
            Say(words);
    }

    /// <summary>The instrument is back.</summary>
    /// <param name="words">Which, and what begins anew.</param>
    public void Back(string words)
    {
        Say(words);
        _said = null;
    }

    private void Say(string words)
    {
        _said = words;
        line($"  >> {words}");
    }
}
