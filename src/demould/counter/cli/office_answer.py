"""What the office knows, as plain JSON: money as text, so that no cent is lost."""

from datetime import datetime
from decimal import Decimal

from demould.counter.cli.answer import Answer, of_figure
from demould.office.bank import Allotted
from demould.office.buying import Buying, Call
from demould.office.cost import Cost
from demould.office.price import Price
from demould.office.use_up import UseUp
from demould.week.costing import Costing


def _money(amount: Decimal | None) -> str | None:
    return None if amount is None else f"{amount:f}"


def _moment(moment: datetime | None) -> str | None:
    return moment.isoformat(timespec="minutes") if moment else None


def of_buying(buying: Buying, now: datetime) -> Answer:
    """Give every call by supplier, what is short today, and what is asked."""
    return {
        "today": [call.need.name for call in buying.today(now)],
        "calls": [_of_call(call) for call in buying.calls],
        "baskets": [
            {
                "supplier": basket.supplier.name,
                "what": [call.need.name for call in basket.calls],
                "cost": _money(basket.cost),
                "under_least_order": _money(basket.under),
            }
            for basket in buying.baskets
        ],
        "never_counted": [need.name for need in buying.uncounted],
        "in_no_larder": [need.name for need in buying.unknown],
        "ask": [str(one) for one in buying.asks],
        "seasons": [str(one) for one in buying.seasons],
    }


def _of_call(call: Call) -> Answer:
    return {
        "what": call.need.name,
        "supplier": call.supplier.name,
        "have": of_figure(call.need.have),
        "used": of_figure(call.need.used),
        "whole": of_figure(call.need.whole) if call.need.whole else None,
        "stock": of_figure(call.stock),
        "short": of_figure(call.short),
        "packs": [
            {
                "count": one.count,
                "size": of_figure(one.pack.size),
                "price": _money(one.price),
            }
            for one in call.packs
        ],
        "cost": _money(call.cost),
        "comes": _moment(call.comes),
        "needed": _moment(call.needed),
        "latest": _moment(call.latest),
        "call_by": _moment(call.by),
        "call_at_the_latest": _moment(call.last),
        "too_late": call.too_late,
        "left": of_figure(call.left),
        "good_until": call.good_until.isoformat() if call.good_until else None,
        "remarks": [str(one) for one in call.remarks],
    }


def of_bank(bank: Allotted) -> Answer:
    """Give the freezer, lot by lot, and tonight's list."""
    return {
        "lots": [
            {
                "dessert": shelf.lot.dessert,
                "component": shelf.lot.component,
                "variant": shelf.lot.variant,
                "pieces": shelf.lot.pieces,
                "grams": of_figure(shelf.lot.grams) if shelf.lot.grams else None,
                "made": shelf.lot.made.isoformat(),
                "good_until": shelf.good_until.isoformat()
                if shelf.good_until
                else None,
                "past": shelf.gone,
                "taken": {one.order: one.amount for one in shelf.taken},
                "stays": shelf.stays,
            }
            for shelf in bank.shelves
        ],
        "thaw_tonight": [
            {
                "dessert": one.par.dessert,
                "par": one.par.pieces,
                "there": one.par.there,
                "take": [
                    {"made": made.isoformat(), "pieces": pieces}
                    for made, pieces in one.lots
                ],
                "missing": one.missing,
            }
            for one in bank.thaw
        ],
    }


def of_use_up(one: UseUp) -> Answer:
    """Give one thing to use up and what it fits into."""
    return {
        "what": one.what,
        "grams": one.grams,
        "until": one.until.isoformat() if one.until else None,
        "fits": [
            {
                "dessert": fit.dessert,
                "component": fit.component,
                "grams": fit.grams,
                "this_week": fit.this_week,
            }
            for fit in one.fits
        ],
        "caution": str(one.caution) if one.caution else None,
    }


def of_costing(one: Costing) -> Answer:
    """Give one order's cost, its prices, and what other numbers mean."""
    return {
        **_of_cost(one.cost),
        "share": _money(one.share),
        "tax": _money(one.tax),
        "from_share": _of_price(one.from_share),
        "from_margin": _of_price(one.from_margin) if one.from_margin else None,
        "sold_at": _of_price(one.sold_at) if one.sold_at else None,
        "sizes": [_of_cost(cost) for cost in one.sizes],
        "one_more": _money(one.one_more),
    }


def _of_cost(cost: Cost) -> Answer:
    return {
        "order": cost.order,
        "dessert": cost.name,
        "made": cost.made,
        "sold": cost.sold,
        "components": {name: _money(amount) for name, amount in cost.of_components},
        "ingredients": _money(cost.ingredients),
        "beside": _money(cost.plates),
        "packing": _money(cost.packing),
        "labour_min": cost.labour.minutes.value,
        "labour": _money(cost.labour.money),
        "energy": _money(cost.energy),
        "all": _money(cost.whole),
        "a_sold_piece": _money(cost.a_sold_piece),
        "labour_is_the_cost": cost.labour_is_the_cost,
        "largest": {name: _money(amount) for name, amount in cost.largest},
        "assumed": [str(one) for one in cost.assumed],
    }


def _of_price(price: Price) -> Answer:
    return {
        "rule": str(price.rule),
        "net": _money(price.net),
        "gross": _money(price.gross),
        "pays": price.pays,
    }
