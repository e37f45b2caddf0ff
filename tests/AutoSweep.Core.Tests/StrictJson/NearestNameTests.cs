using AutoSweep.Core.StrictJson;
using FsCheck.Xunit;

namespace AutoSweep.Core.Tests.StrictJson;

public class NearestNameTests
{
    private static readonly string[] Known = ["number", "gearTrain", "wheelTeeth", "filter", "group"];

    [Theory]
    [InlineData("geartrain", "gearTrain")]
    [InlineData("gaerTrian", "gearTrain")]
    [InlineData("wheel_teeth", "wheelTeeth")]
    [InlineData("filters", "filter")]
    [InlineData("nmber", "number")]
    [InlineData("colour", null)]
    [InlineData("", null)]
    public void A_mistyped_name_finds_the_one_that_was_meant_and_a_stranger_none(string name, string? expected) =>
        Assert.Equal(expected, NearestName.To(name, Known));

    [Property]
    public bool A_name_with_one_letter_too_many_is_always_found(byte pick, byte place, char extra)
    {
        var meant = Known[pick % Known.Length];
        return NearestName.To(meant.Insert(place % (meant.Length + 1), extra.ToString()), Known) == meant;
    }
}
