namespace AutoSweep.Sim.Physics;

/// <summary>What the clip is on.</summary>
/// <param name="Output">The terminal, or none while the clip is in the air.</param>
/// <param name="Fixture">Whether the fixture is clipped in the place of the output's capacitor.</param>
internal readonly record struct Connection(int? Output, bool Fixture)
{
    public static Connection Open => default;
}
