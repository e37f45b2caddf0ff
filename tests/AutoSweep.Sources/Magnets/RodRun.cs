using AutoSweep.Core.Magnets;

namespace AutoSweep.Sources.Magnets;

/// <summary>One rod, worked to its end.</summary>
/// <param name="Truth">The rod.</param>
/// <param name="Ending">Why the work ended.</param>
/// <param name="Moves">Moves made.</param>
/// <param name="Decibels">The true level over target in the end.</param>
/// <param name="Touched">Whether the wheel was touched.</param>
/// <param name="ClosestGap">The true gap at the highest tooth in the end, in millimetres.</param>
public sealed record RodRun(RodTruth Truth, GuidanceEnding Ending, int Moves, double Decibels, bool Touched, double ClosestGap)
{
    /// <summary>Works with guidance.</summary>
    public static RodRun Guided(RodTruth truth, RodHand hand, MagnetGuidanceOptions options, double leastGap, int seed)
    {
        var rod = new SimulatedRod(truth, hand, seed);
        var guidance = new MagnetGuidance(new(truth.WheelTeeth, leastGap), options);
        while (true)
        {
            switch (guidance.Next())
            {
                case GuidanceStep.Read:
                    guidance.Tell(rod.Read());
                    break;
                case GuidanceStep.Move move:
                    rod.Move(move.Order);
                    guidance.Tell(rod.Read(move.Order));
                    break;
                case GuidanceStep.Done done:
                    return new(truth, done.Result.Ending, rod.Moves, rod.Decibels, rod.Touched, rod.ClosestGap);
            }
        }
    }

    /// <summary>Works as hands do that know neither slope nor gap: the same small step in the right direction, until the level is in its band.</summary>
    public static RodRun FixedSteps(RodTruth truth, RodHand hand, MagnetGuidanceOptions options, double step, int seed, int budget = 40)
    {
        var rod = new SimulatedRod(truth, hand, seed);
        while (rod.Moves < budget && !rod.Touched)
        {
            var now = rod.Read();
            if (Math.Abs(now.Decibels) <= options.HalfBandDecibels)
                return new(truth, GuidanceEnding.InBand, rod.Moves, rod.Decibels, rod.Touched, rod.ClosestGap);
            rod.Move(new(now.Decibels > 0 ? MoveDirection.Out : MoveDirection.In, step));
        }

        return new(truth, GuidanceEnding.BudgetSpent, rod.Moves, rod.Decibels, rod.Touched, rod.ClosestGap);
    }
}
