using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Stock;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/stock?days=30              StockBookView: what there is, how long it lasts, what it cost
//      GET /api/v1/stock/moves?limit=50       StockMoveView[], newest first
//      PUT /api/v1/deliveries/{id}            StockMoveRequest -> StockMoveView; a tank of another product answers 409 on wentIn until it is said that it went in
//      PUT /api/v1/refills/{id}               StockMoveRequest -> StockMoveView; from the store into a tank
//      PUT /api/v1/stock-counts/{id}          StockMoveRequest -> StockMoveView; what was found in the store, or in a tank
//      PUT /api/v1/bathers/{id}               BathersRequest   -> BathersView; the newest count of a pool and day holds
//      GET /api/v1/bathers?days=14            BathersView[], newest day first

/// <summary>A delivery, a refill or a count as a person enters it: the amount in L or in kg.</summary>
/// <param name="ProductId">The product by its label.</param>
/// <param name="PumpId">The pump whose tank it is about; null for the store.</param>
/// <param name="Litres">How much, in L.</param>
/// <param name="Kilograms">Or in kg.</param>
/// <param name="HappenedAt">When it was done.</param>
/// <param name="By">Who received, filled or counted.</param>
/// <param name="CheckedBy">Who read label and tank beside them.</param>
/// <param name="Containers">How many containers.</param>
/// <param name="Batch">Batch as printed.</param>
/// <param name="Strength">Strength on the label, per cent, as the plant file means it.</param>
/// <param name="MadeOn">The day it was made.</param>
/// <param name="Price">Price of the whole delivery.</param>
/// <param name="WentIn">It has been put into the tank of another product: record it all the same.</param>
/// <param name="Note">A remark.</param>
/// <param name="Corrects">The row that this one corrects.</param>
/// <param name="CorrectionReason">Why.</param>
public sealed record StockMoveRequest(
    string? ProductId, string? PumpId, double? Litres, double? Kilograms, Instant HappenedAt, string? By, string? CheckedBy = null, int? Containers = null, string? Batch = null, double? Strength = null,
    DateOnly? MadeOn = null, double? Price = null, bool WentIn = false, string? Note = null, Guid? Corrects = null, string? CorrectionReason = null);

/// <summary>A row of the stock book.</summary>
/// <param name="Move">As entered.</param>
/// <param name="Place">Names of pump and circuit of the tank: pumps of two circuits may have one name. Null for the store.</param>
/// <param name="ArrivedAt">When it reached the server.</param>
/// <param name="Corrected">A later row takes its place.</param>
/// <param name="Advice">What its label is worth saying of.</param>
/// <param name="Wrong">It is in the tank of another product: what that comes to; null otherwise.</param>
public sealed record StockMoveView(StockMove Move, string? Place, Instant ArrivedAt, bool Corrected, IReadOnlyList<Said> Advice, Said? Wrong);

/// <summary>The stock of the plant.</summary>
/// <param name="Today">Today on the site's calendar.</param>
/// <param name="From">First day of what was used and cost.</param>
/// <param name="Products">A product each, in the order of the plant file.</param>
/// <param name="Months">What each month cost, newest first.</param>
/// <param name="TooClose">Products that share a store and must not.</param>
public sealed record StockBookView(DateOnly Today, DateOnly From, IReadOnlyList<StockView> Products, IReadOnlyList<StockMonthView> Months, IReadOnlyList<Said> TooClose);

/// <summary>A product in stock.</summary>
/// <param name="Id">The product.</param>
/// <param name="Name">As on the drum.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Unit">What amounts count.</param>
/// <param name="StrengthPlan">Strength by the plant file, per cent.</param>
/// <param name="StorePlace">What people call its store.</param>
/// <param name="Store">In the store by the book; null while it was never counted.</param>
/// <param name="Tanks">Its tanks.</param>
/// <param name="Total">What can be used of all; null when nothing is known.</param>
/// <param name="Outlook">How long it lasts; null when too little is known.</param>
/// <param name="Why">What is missing for that.</param>
/// <param name="DeliveryDays">Days from order to delivery by the plant file.</param>
/// <param name="RunsOut">It may be used up before an order would come.</param>
/// <param name="UnitPrice">Price of a unit now.</param>
/// <param name="Use">What was used of it in the time asked for.</param>
/// <param name="Days">Use by day, oldest first.</param>
public sealed record StockView(
    string Id, string Name, ProductKind Kind, StockUnit Unit, double? StrengthPlan, string? StorePlace, double? Store, IReadOnlyList<TankView> Tanks, double? Total, StockOutlookView? Outlook, Said? Why,
    double? DeliveryDays, bool RunsOut, double? UnitPrice, StockUseView Use, IReadOnlyList<StockDayView> Days);

/// <summary>A tank.</summary>
/// <param name="PumpId">Its pump.</param>
/// <param name="Name">What people call the pump.</param>
/// <param name="Circuit">Name of its circuit.</param>
/// <param name="Litres">What it holds.</param>
/// <param name="Usable">What of it the pump can draw.</param>
/// <param name="TankLitres">Content when full.</param>
/// <param name="Strength">Strength of the content today, per cent.</param>
/// <param name="Batch">Newest batch in it.</param>
/// <param name="Outlook">How long it lasts without a refill.</param>
/// <param name="Wrong">A product in it that does not belong there.</param>
/// <param name="FilledByNobody">It was filled and nobody wrote down what with: when.</param>
public sealed record TankView(
    string PumpId, string Name, string Circuit, double? Litres, double? Usable, double? TankLitres, double? Strength, string? Batch, StockOutlookView? Outlook, Said? Wrong, Instant? FilledByNobody);

/// <summary>For how long a stock lasts: four times in five it ends between the two.</summary>
/// <param name="Earliest">Days; null beyond a year.</param>
/// <param name="Middle">Days by the usual use.</param>
/// <param name="Latest">Days.</param>
/// <param name="PerDay">Usual use a day.</param>
/// <param name="ByWeekday">Weekdays were told apart.</param>
/// <param name="Days">On how many days it rests.</param>
public sealed record StockOutlookView(double? Earliest, double? Middle, double? Latest, double PerDay, bool ByWeekday, int Days);

/// <summary>What was used in a time.</summary>
/// <param name="Amount">How much.</param>
/// <param name="Cost">What it cost; null when nothing of it had a price.</param>
/// <param name="Unpriced">How much had no price.</param>
/// <param name="Days">Days it covers.</param>
/// <param name="Bathers">Bathers of the days on which all pools were counted.</param>
/// <param name="PerBather">How much a bather.</param>
/// <param name="CostPerBather">Cost a bather.</param>
/// <param name="PerCubicMetreDay">How much a m3 of water and day.</param>
/// <param name="CostPerCubicMetreDay">Cost of a m3 of water and day.</param>
public sealed record StockUseView(
    double Amount, double? Cost, double Unpriced, int Days, int Bathers, double? PerBather, double? CostPerBather, double? PerCubicMetreDay, double? CostPerCubicMetreDay);

/// <summary>Use of a day.</summary>
public sealed record StockDayView(DateOnly Day, double Amount, double? Cost, bool Whole);

/// <summary>Cost of a month.</summary>
/// <param name="Month">Its first day.</param>
/// <param name="Cost">What was used cost; null when nothing had a price.</param>
/// <param name="Products">By product.</param>
public sealed record StockMonthView(DateOnly Month, double? Cost, IReadOnlyList<ProductMonthView> Products);

/// <summary>A product in a month.</summary>
public sealed record ProductMonthView(string ProductId, string Name, StockUnit Unit, double Amount, double? Cost);

/// <summary>How many bathed.</summary>
public sealed record BathersRequest(string? PoolId, DateOnly Day, int? Number, string? By);

/// <summary>How many bathed, as said last.</summary>
public sealed record BathersView(Guid Id, string PoolId, string Pool, DateOnly Day, int Number, string By, Instant SaidAt);
