using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Terminal;

/// <summary>Tells the person at a terminal of an instrument that is missing, and of its return.</summary>
/// <param name="line">Takes a line.</param>
/// <param name="bell">Takes the bell's character.</param>
public sealed class GapLines(Action<string> line, Action<string> bell) : IGapTeller
{
    /// <summary>How a terminal ends the wait.</summary>
    public const string Stop = " Ctrl-C stops.";

    private string? _said;

    /// <inheritdoc/>
    /// <remarks>Two beeps, as for every question.</remarks>
    public void Missing(string words)
    {
        bell("\a\a");
        StillMissing(words);
    }

    /// <inheritdoc/>
    /// <remarks>Told only where it found another thing than the last.</remarks>
    public void StillMissing(string words)
    {
        if (words != _said)
            Say(words, Stop);
    }

    /// <inheritdoc/>
    public void Back(string words)
    {
        Say(words, "");
        _said = null;
    }

    private void Say(string words, string more)
    {
        _said = words;
        line($"  >> {words}{more}");
    }
}
