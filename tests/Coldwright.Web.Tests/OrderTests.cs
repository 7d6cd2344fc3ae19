using System.Text.Json;
using Coldwright.Design.Blending;
using Coldwright.Web.Orders;

namespace Coldwright.Web.Tests;

/// <summary>What is filled in beside a button, as the program reads it.</summary>
public class OrderTests
{
    [Theory]
    [InlineData("cooling", BlendGoal.Cooling)]
    [InlineData("litres", BlendGoal.Litres)]
    [InlineData("lowest", BlendGoal.Lowest)]
    [InlineData("endless", BlendGoal.Endless)]
    public void EveryGoalOfTheSearchCanBeChosenOnThePage(string word, BlendGoal goal)
    {
        using var order = JsonDocument.Parse($$"""{"goal":"{{word}}"}""");
        Assert.Equal(goal, BlendOrder.Read(new OrderReader(order.RootElement, 101325), cubic: true).Goal);
        Assert.Contains($"['{word}', ", Http.PageResources.Text("orders.js"), StringComparison.Ordinal);
        Assert.Equal(4, Enum.GetValues<BlendGoal>().Length);
    }

    [Fact]
    public void AllThatIsWrongIsSaidAtOnce()
    {
        using var order = JsonDocument.Parse("""{"at":"17 barg","margin":"much","gases":"nitrogen"}""");
        var refusal = Assert.Throws<ArgumentException>(() => BlendOrder.Read(new OrderReader(order.RootElement, 101325), cubic: true));
        foreach (var field in (string[])["load temperature", "freezing margin", "gases"]) Assert.Contains(field, refusal.Message, StringComparison.Ordinal);
    }
}
