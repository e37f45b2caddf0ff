namespace AutoSweep.Worker.Bench;

/// <summary>Tells the person of an instrument that is missing, and of its return.</summary>
public interface IGapTeller
{
    /// <summary>A gap begins.</summary>
    /// <param name="words">What is missing, and what to look at.</param>
    void Missing(string words);

    /// <summary>Another try has failed.</summary>
    /// <param name="words">What is missing, and what to look at.</param>
    void StillMissing(string words);

    /// <summary>The instrument is back.</summary>
    /// <param name="words">Which, and what begins anew.</param>
    void Back(string words);
}
