namespace AutoSweep.Worker.Bench;

/// <summary>What a look at the clips showed.</summary>
public abstract record ToneSight
{
    private ToneSight()
    {
    }

    /// <summary>The tone of one output of the profile, counted alike again and again.</summary>
    /// <param name="Output">The output's number.</param>
    /// <param name="Hertz">The mean count in hertz.</param>
    public sealed record Tone(int Output, double Hertz) : ToneSight;

    /// <summary>A steady tone that is none of the profile's.</summary>
    /// <param name="Hertz">The mean count in hertz.</param>
    public sealed record Foreign(double Hertz) : ToneSight;

    /// <summary>Nothing, or the hum of the mains.</summary>
    /// <param name="Hum">Whether the counter found the mains.</param>
    /// <param name="HumHertz">What it counted then.</param>
    public sealed record Silence(bool Hum, double? HumHertz = null) : ToneSight;

    /// <summary>Something sounds, but the counter makes nothing of it.</summary>
    public sealed record Uncountable : ToneSight;
}
