using System.CommandLine;

namespace AutoSweep.Worker.Commands;

/// <summary>The range of a flag that takes a number.</summary>
public static class FlagRange
{
    /// <summary>Refuses a number outside a range, with both in the message.</summary>
    /// <param name="option">The flag.</param>
    /// <param name="least">The smallest number that is taken.</param>
    /// <param name="most">The largest.</param>
    public static void Require<T>(Option<T> option, double least, double most) => option.Validators.Add(result =>
    {
        var value = Convert.ToDouble(result.GetValueOrDefault<T>(), System.Globalization.CultureInfo.InvariantCulture);
        if (!(value >= least && value <= most))
            result.AddError(FormattableString.Invariant($"{option.Name} is {value}; expected a number from {least} to {most}."));
    });
}
