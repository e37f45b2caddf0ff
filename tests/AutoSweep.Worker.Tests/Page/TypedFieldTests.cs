using AutoSweep.Core;
using AutoSweep.Worker.Page.Shared;

namespace AutoSweep.Worker.Tests.Page;

public sealed class TypedFieldTests
{
    [Theory]
    [InlineData("0.45", 0.45)]
    [InlineData(" 0,45 ", 0.45)]
    [InlineData("0", 0)]
    [InlineData("10", 10)]
    public void A_number_is_read_with_either_decimal_mark(string typed, double number) =>
        Assert.Equal(number, TypedField.Number(typed, "the gap", 0, 10));

    [Theory]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("-0.1")]
    [InlineData("10.01")]
    [InlineData("1e3")]
    [InlineData("1.0.0")]
    [InlineData("NaN")]
    [InlineData("half")]
    public void What_is_no_number_in_range_is_refused_with_the_fields_name(string? typed)
    {
        var fault = Assert.Throws<BenchFaultException>(() => TypedField.Number(typed, "the gap in mm", 0, 10));

        Assert.StartsWith("the gap in mm: ", fault.Found, StringComparison.Ordinal);
        Assert.Equal("a number from 0 to 10", fault.Expected);
    }

    [Theory]
    [InlineData("12", 12)]
    [InlineData(" 7", 7)]
    public void A_whole_number_is_digits_only(string typed, int number)
    {
        Assert.Equal(number, TypedField.Whole(typed, "the output"));
        Assert.Throws<BenchFaultException>(() => TypedField.Whole(typed + ".0", "the output"));
        Assert.Throws<BenchFaultException>(() => TypedField.Whole("-" + typed, "the output"));
    }

    [Fact]
    public void A_line_of_text_is_trimmed_and_held_to_its_length()
    {
        Assert.Equal("AB", TypedField.Text(" AB ", "by whom", 2));
        Assert.Null(TypedField.TextOrNone("  ", "by whom", 2));
        Assert.Throws<BenchFaultException>(() => TypedField.Text("  ", "by whom", 2));
        Assert.Throws<BenchFaultException>(() => TypedField.Text("ABC", "by whom", 2));
        Assert.Throws<BenchFaultException>(() => TypedField.TextOrNone("a\u0007b", "by whom", 9));
    }
}
