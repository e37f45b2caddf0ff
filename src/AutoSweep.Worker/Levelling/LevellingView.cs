using AutoSweep.Core.Magnets;

namespace AutoSweep.Worker.Levelling;

/// <summary>What a person at the magnets sees from a metre away.</summary>
/// <param name="Decibels">How far the level lies above its target now.</param>
/// <param name="HalfBandDecibels">How far it may, to either side.</param>
/// <param name="Order">What to do with the rod; none while a reading is taken.</param>
public sealed record LevellingView(double Decibels, double HalfBandDecibels, MagnetMove? Order);
